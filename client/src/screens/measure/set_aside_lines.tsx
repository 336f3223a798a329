/* What was set aside and why, and what the result would be with all of it put back, said plainly not to be the result. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { kebab } from "../../parts/word_ids";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { assessedPutBack, setAsideOf } from "./put_back";
import type { Reading } from "./open";
import { meanLine, phraseOf, resultSetOf, valueOf, withheldOf } from "./wording";

function lineOf(measurement: Measurement, set: number, reading: Reading): string {
  const facts = { value: valueOf(reading), reason: say(`set-aside-${kebab(reading.set_aside ?? "other")}`), n: String(set + 1) };
  return say(measurement.sets.length > 1 ? "aside-line-of-set" : "aside-line", facts);
}

/** The sentence of the other result; undefined when nothing was set aside. */
export function putBackLine(measurement: Measurement): string | undefined {
  const other = assessedPutBack(measurement);
  if (!other) return undefined;
  const phrase = withheldOf(other) ?? say("sentence", { words: phraseOf(other) });
  return say("aside-put-back", { mean: meanLine(resultSetOf(other)), phrase });
}

/** Nothing when nobody set anything aside. */
export function SetAsideLines({ measurement }: { measurement: Measurement }): JSX.Element | null {
  const aside = setAsideOf(measurement);
  if (aside.length === 0) return null;
  return (
    <section class="stack">
      <h2>{say("aside-title")}</h2>
      <ul class="plain-lines">
        {aside.map(({ set, reading }) => <li key={reading.id}>{lineOf(measurement, set, reading)}</li>)}
      </ul>
      <p>{putBackLine(measurement)}</p>
    </section>
  );
}
