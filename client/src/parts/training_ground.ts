/* Whether this window is in training: one signal, and the ground colour of its own on the page. Must not know the record. */
import { signal } from "@preact/signals";
import { showGround } from "./look";

const PLACE = "quietcuff-training";

/** True while everything shown and filed is for training. */
export const inTraining = signal(false);

/** Was training left open when the app was last ended? Then it comes back in training. */
export function wasTraining(): boolean {
  try {
    return localStorage.getItem(PLACE) === "yes";
  } catch {
    return false;
  }
}

/** Shows training, or the record. */
export function showTraining(isOn: boolean): void {
  inTraining.value = isOn;
  document.documentElement.dataset["training"] = isOn ? "yes" : "no";
  showGround();
}

/** Remembers which of the two the next start shows. False when the browser keeps nothing: then the next start shows the record. */
export function rememberTraining(isOn: boolean): boolean {
  try {
    if (isOn) localStorage.setItem(PLACE, "yes");
    else localStorage.removeItem(PLACE);
  } catch {
    /* Not remembered. */
  }
  return wasTraining() === isOn;
}
