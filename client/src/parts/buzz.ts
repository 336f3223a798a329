/* Whether this phone may buzz once when a quiet time is over. Silent unless somebody asked for it here; kept like the look,
   since it is about the phone and no clinical data. */
import { signal } from "@preact/signals";

const PLACE = "quietcuff-buzz";
const ONCE_MS = 200;

function remembered(): boolean {
  try {
    return localStorage.getItem(PLACE) === "yes";
  } catch {
    return false;
  }
}

/** True when it was asked for. */
export const mayBuzz = signal(remembered());

/** Can this phone buzz at all? */
export function canBuzz(): boolean {
  return typeof navigator.vibrate === "function";
}

/** Asks for it, or takes that back. */
export function chooseBuzz(isWanted: boolean): void {
  mayBuzz.value = isWanted;
  try {
    if (isWanted) localStorage.setItem(PLACE, "yes");
    else localStorage.removeItem(PLACE);
  } catch {
    /* Not remembered; it still holds until the window is closed. */
  }
}

/** One short buzz, where it was asked for. */
export function buzz(): void {
  if (mayBuzz.value && canBuzz()) navigator.vibrate(ONCE_MS);
}
