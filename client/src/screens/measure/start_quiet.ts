/* Starts a quiet time for a known animal without leaving the round: its measurement is opened as a draft with the time running in it.
   The time is a start and a need, so it is exact after the phone was put away. Must not start one anew that runs or ran in this visit. */
import type { PatientCard } from "../../offline/journal";
import { draftOf, openOf } from "./open";
import { withQuiet } from "./quiet";
import { quietNeed_s } from "./quiet_need";
import { openWith } from "./start_measuring";
import { thePhone } from "../place";

/** Resolves when the draft is on disk. An animal with an open draft gets its quiet time in that one. */
export async function startQuiet(card: PatientCard, now_ms: number = Date.now()): Promise<void> {
  const phone = thePhone();
  const begun = (await phone.drafts()).map(openOf).find(({ measurement }) => measurement.patient === card.id);
  const open = begun ?? (await openWith(card, now_ms));
  await phone.keepDraft(draftOf(withQuiet(open, now_ms, quietNeed_s(open.measurement.species)), now_ms));
}
