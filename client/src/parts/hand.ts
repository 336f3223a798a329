/* Which hand holds the phone: the words beside the number pad stand under its thumb. Kept in the browser's small store like the
   look, since it must be known before the first paint; it is no clinical data. */
import { signal } from "@preact/signals";

export const HANDS = ["right", "left"] as const;
export type Hand = (typeof HANDS)[number];

const PLACE = "quietcuff-hand";

function remembered(): Hand {
  try {
    return localStorage.getItem(PLACE) === "left" ? "left" : "right";
  } catch {
    return "right";
  }
}

/** The hand it is laid out for now. */
export const hand = signal<Hand>("right");

function show(next: Hand): void {
  hand.value = next;
  document.documentElement.dataset["hand"] = next;
}

/** Lays out for the remembered hand. */
export function showHand(): void {
  show(remembered());
}

/** Lays out for this hand, and remembers it. */
export function chooseHand(next: Hand): void {
  show(next);
  try {
    localStorage.setItem(PLACE, next);
  } catch {
    /* Not remembered; it still holds until the window is closed. */
  }
}
