/* From where Help was opened, so that the way back leads to the same screen and, in Measure, to the same part: which part is
   open lies in the draft. Must not hold anything typed. */
import { openPlace } from "../last_place";

let before = "";

const HELP = /^#\/help(\/|$)/;

addEventListener("hashchange", (event) => {
  const old = new URL(event.oldURL).hash;
  if (!HELP.test(old)) before = old;
});

/** The address Help was opened from; after a restart on Help itself, the open measurement or the round. */
export function wayBack(): string {
  if (before && !HELP.test(before)) return before;
  const id = openPlace();
  return id ? `#/measure/${id}` : "#/round";
}
