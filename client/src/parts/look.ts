/* Day, dim or outdoor: one tap to the next. Kept in the browser's small store, since it must be known before the first paint
   (a white flash in a dim room frightens the cat); it is no clinical data. */
import { signal } from "@preact/signals";

export const LOOKS = ["day", "dim", "outdoor"] as const;
export type Look = (typeof LOOKS)[number];

const PLACE = "quietcuff-look";

/** What `public/look.js` found before the first paint: the look kept, or what the device prefers. */
function found(): Look {
  return LOOKS.find((one) => one === document.documentElement.dataset["look"]) ?? "day";
}

/** The look shown now. */
export const look = signal<Look>("day");

function show(next: Look): void {
  look.value = next;
  document.documentElement.dataset["look"] = next;
  document.documentElement.style.removeProperty("color-scheme"); // from here on the sheet says it
  showGround();
}

/** The browser's own bar takes the ground's colour, which look and training choose. */
export function showGround(): void {
  const ground = getComputedStyle(document.documentElement).getPropertyValue("--ground").trim();
  document.querySelector('meta[name="theme-color"]')?.setAttribute("content", ground);
}

/** Goes on with the look of the first paint. */
export function showLook(): void {
  show(found());
}

/** One tap: the next look. */
export function nextLook(): void {
  chooseLook(LOOKS[(LOOKS.indexOf(look.value) + 1) % LOOKS.length] ?? "day");
}

/** Shows this look, and remembers it. */
export function chooseLook(next: Look): void {
  show(next);
  try {
    localStorage.setItem(PLACE, next);
  } catch {
    /* Not remembered; the look still holds until the window is closed. */
  }
}
