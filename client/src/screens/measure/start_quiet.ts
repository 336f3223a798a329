/* Starts a quiet time for a known animal without leaving the round: its measurement is opened as a draft with the time running in it.
   The time is a start and a need, so it is exact after the phone was put away. Must not start one anew that runs or ran. */
import type { PatientCard } from "../../offline/journal";
import { draftOf, openOf, type Open } from "./open";
import { quietNeed_s } from "./quiet_need";
import { openWith } from "./start_measuring";
import { thePhone } from "../place";

/** The same measurement with its quiet time running from now; one that has its quiet time stays as it is. */
export function withQuiet(open: Open, now_ms: number): Open {
  return open.quiet ? open : { ...open, quiet: { from_ms: now_ms, need_s: quietNeed_s(open.measurement.species) } };
}

/** Resolves when the draft is on disk. An animal with an open draft gets its quiet time in that one. */
export async function startQuiet(card: PatientCard, now_ms: number = Date.now()): Promise<void> {
  const phone = thePhone();
  const begun = (await phone.drafts()).map(openOf).find(({ measurement }) => measurement.patient === card.id);
  await phone.keepDraft(draftOf(withQuiet(begun ?? (await openWith(card, now_ms)), now_ms), now_ms));
}
