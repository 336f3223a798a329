/* A result as it is told everywhere outside Measure: the whole phrase and the mean; and where server and phone differ, both. */
import type { JSX } from "preact";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { tenths } from "../../parts/figures";
import type { Assessment } from "../../rules/assessment";
import { boundsOf, phraseOf, resultSetOf } from "./wording";

/**
 * "low risk of organ damage (140–159), mean 145.2 mmHg". What bounds the pressure without an average comes first and alone: beside
 * "every reading was 180 or above" a mean, or "not placed" by itself, would be read as less. `measurement` holds the readings of it.
 */
export function resultLine(assessment: Assessment, measurement: Measurement | undefined): string {
  const set = resultSetOf(assessment);
  const phrase = phraseOf(assessment);
  const readings = measurement?.sets[assessment.result_set]?.readings;
  if (set.bounds && !readings) return phrase;
  const bound = boundsOf(set, readings ?? []);
  if (bound) return say("patient-visit-bounded", { bound, phrase });
  if (!set.systolic) return phrase;
  const word = set.verdict === "steady" ? "patient-visit-result" : "patient-visit-orientation";
  return say(word, { phrase, mean: tenths(set.systolic.mean_tenths_mmhg) });
}

/** Both results, plainly, when the server worked it out differently; nothing otherwise. */
export function Differs({ phone, server, measurement }: { phone: unknown; server: unknown; measurement: Measurement | undefined }): JSX.Element | null {
  if (!server) return null;
  return (
    <div class="differs stack" role="status">
      <strong>{say("differs-title")}</strong>
      {phone !== undefined && <p>{say("differs-phone", { phrase: resultLine(phone as Assessment, measurement) })}</p>}
      <p>{say("differs-server", { phrase: resultLine(server as Assessment, measurement) })}</p>
      <p class="small">{say("differs-stands")}</p>
    </div>
  );
}
