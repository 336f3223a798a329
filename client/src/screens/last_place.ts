/* An app killed by the phone is started anew at its front door: this brings it back to the measurement that was open.
   Only an id that means nothing by itself is kept, in the browser's small store; the draft itself lies in the record. */
import { effect } from "@preact/signals";
import type { Phone } from "../offline/journal";
import { go, route } from "./route";

const PLACE = "quietcuff-place";
/** Longer ago than this the list is the better start: the open measurement stands first on it. */
const SAME_VISIT_MS = 4 * 3_600_000;

/** The id of the measurement that was open last; null when none was. */
export function openPlace(): string | null {
  try {
    return localStorage.getItem(PLACE);
  } catch {
    return null;
  }
}

/** Remembers from now on which measurement is open. */
export function rememberPlace(): void {
  effect(() => {
    const at = route.value;
    try {
      if (at.at === "help") return; // read in the middle of a measurement, which is where the way back leads
      if (at.at === "measure") localStorage.setItem(PLACE, at.id);
      else localStorage.removeItem(PLACE);
    } catch {
      /* Without it the app starts at the list. */
    }
  });
}

/** At a start without an address of its own: back to the measurement that was open, when its draft is there and fresh. */
export async function backToPlace(phone: Phone, now_ms: number): Promise<void> {
  const id = openPlace();
  if (!id || location.hash.length > 2) return;
  const draft = (await phone.drafts()).find((one) => one.id === id);
  if (draft && now_ms - draft.updatedMs < SAME_VISIT_MS) go(`#/measure/${id}`, true);
}
