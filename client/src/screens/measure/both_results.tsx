/* A result as it is told everywhere outside Measure: the whole phrase and the mean; and where server and phone differ, both. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { tenths } from "../../parts/figures";
import type { Assessment } from "../../rules/assessment";
import { phraseOf, resultSetOf } from "./wording";

/** "low risk of organ damage (140–159), mean 145.2 mmHg". */
export function resultLine(assessment: Assessment): string {
  const mean = resultSetOf(assessment).systolic?.mean_tenths_mmhg;
  const phrase = phraseOf(assessment);
  return mean === undefined ? phrase : say("patient-visit-result", { phrase, mean: tenths(mean) });
}

/** Both results, plainly, when the server worked it out differently; nothing otherwise. */
export function Differs({ phone, server }: { phone: unknown; server: unknown }): JSX.Element | null {
  if (!server) return null;
  return (
    <div class="differs stack" role="status">
      <strong>{say("differs-title")}</strong>
      {phone !== undefined && <p>{say("differs-phone", { phrase: resultLine(phone as Assessment) })}</p>}
      <p>{say("differs-server", { phrase: resultLine(server as Assessment) })}</p>
      <p class="small">{say("differs-stands")}</p>
    </div>
  );
}
