/* How this was worked out: every reading with its standing, then each rule with its figures, its sources and how certain they are.
   Opens without network; all of it comes from the rule documents and the assessment, nothing is worked out anew. */
import type { JSX } from "preact";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { say } from "../../contract/words";
import type { Assessment } from "../../rules/assessment";
import { RULES } from "./judged";
import { ruleFigures, type RuleName } from "./rule_figures";
import { standingWords, valueOf } from "./wording";
import { workedHere } from "./worked_here";

interface Props {
  measurement: Measurement;
  assessment: Assessment;
}

interface Source {
  kind: string;
  read?: boolean;
  why: string;
}

function sourceWords({ kind, read, why }: Source): string {
  const word = kind === "published" ? (read ? "published-read" : "published-not-read") : kind.replaceAll(" ", "-");
  return say(`source-${word}`, { why });
}

function Readings({ measurement, assessment }: Props): JSX.Element {
  return (
    <>
      <h3>{say("worked-readings")}</h3>
      {measurement.sets.map((set, at) => (
        <table key={at}>
          <caption>
            {say("set-number", { n: String(at + 1) })}, {say(`method-${set.method}`)}
          </caption>
          <tbody>
            {set.readings.map((reading, n) => (
              <tr key={reading.id}>
                <th scope="row">{n + 1}</th>
                <td>
                  <span class="value">{valueOf(reading)}</span>
                  {reading.palpated_bpm !== undefined && <span class="small"> {say("pulse-felt", { bpm: String(reading.palpated_bpm) })}</span>}
                  {reading.pulse_bpm !== undefined && <span class="small"> {say("worked-pulse", { pulse: String(reading.pulse_bpm) })}</span>}
                </td>
                <td>{standingWords(assessment, at, reading)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </>
  );
}

function Rule({ name, measurement, assessment }: Props & { name: RuleName }): JSX.Element {
  const sources: Record<string, Source> = RULES.documents[name].sources;
  const words = [...new Set(Object.values(sources).map(sourceWords))];
  return (
    <section class="stack">
      <h3>{say(`worked-rule-${name}`)}</h3>
      <p>{say(`worked-${name}`, ruleFigures(name, measurement.species))}</p>
      <p>
        <strong>{say("worked-here")}</strong> {workedHere(name, measurement, assessment).join(" ")}
      </p>
      <details class="more">
        <summary>{say("worked-sources", { n: words.length })}</summary>
        <ul class="small">
          {words.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
    </section>
  );
}

const ORDER: readonly RuleName[] = ["cuff", "standing", "agreement", "averaging", "bounds", "height", "category", "cautions"];

export function WorkedOut({ measurement, assessment }: Props): JSX.Element {
  return (
    <details class="worked">
      <summary>{say("worked-title")}</summary>
      <div class="stack">
        <p>{say("worked-rules", { name: assessment.rules })}</p>
        <Readings measurement={measurement} assessment={assessment} />
        {ORDER.map((name) => (
          <Rule key={name} name={name} measurement={measurement} assessment={assessment} />
        ))}
      </div>
    </details>
  );
}

