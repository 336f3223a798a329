/* The visits of one animal, newest first: result or outcome, how it was measured, and the whole working-out. Where an entry is, is
   said of those alone that are not in the record: the same word on every visit says nothing.
   A visit that was not done or was stopped is a result like any other. */
import type { JSX } from "preact";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { say } from "../../contract/words";
import type { Visit } from "../../offline/journal";
import { dayAndTime } from "../../parts/figures";
import { StateWord } from "../../parts/state_word";
import { kebab } from "../../parts/word_ids";
import type { Assessment } from "../../rules/assessment";
import { placingLine } from "./animal_words";
import { Differs, resultLine } from "../measure/both_results";
import { resultSetOfVisit } from "../measure/open";
import { WorkedOut } from "../measure/worked_out";

type Outcome = NonNullable<Measurement["outcome"]>;

function OutcomeLines({ outcome: { kind, why, note } }: { outcome: Outcome }): JSX.Element {
  return (
    <>
      <p class="result-line">{say(`visit-${kebab(kind)}`, { why: say(`visit-why-${kebab(why)}`) })}</p>
      {note && <p>{note}</p>}
    </>
  );
}

function OneVisit({ visit }: { visit: Visit }): JSX.Element {
  const measurement = visit.letter.body as unknown as Measurement;
  const assessment = visit.letter.assessment as Assessment | undefined;
  const shown = (visit.serverAssessment as Assessment | undefined) ?? assessment;
  const hasReadings = measurement.sets.some(({ readings }) => readings.length > 0);
  const set = resultSetOfVisit(visit);
  return (
    <li class="stack">
      <h3>{dayAndTime(visit.startedMs)}</h3>
      {measurement.outcome && <OutcomeLines outcome={measurement.outcome} />}
      {shown && hasReadings && <p class="result-line">{resultLine(shown, measurement)}</p>}
      {set && hasReadings && <p class="small">{placingLine(set)}</p>}
      {!visit.inRecord && <StateWord state={visit.state ?? "waiting"} />}
      <Differs phone={assessment} server={visit.serverAssessment} measurement={measurement} />
      {shown && hasReadings && <WorkedOut measurement={measurement} assessment={shown} />}
    </li>
  );
}

export function Visits({ visits }: { visits: readonly Visit[] | undefined }): JSX.Element {
  return (
    <section class="stack">
      <h2>{say("patient-visits")}</h2>
      {visits && visits.length === 0 && <p>{say("patient-no-visits")}</p>}
      <ol class="list">
        {visits?.map((visit) => <OneVisit key={visit.id} visit={visit} />)}
      </ol>
    </section>
  );
}
