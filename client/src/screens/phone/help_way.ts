/* Where the way back from Help leads: to the same screen and, in Measure, to the same part, since which part is open lies in the
   draft. Must not remember a page by itself. */
import { openPlace } from "../last_place";
import { underHelp } from "../route";

/** The address Help was opened from; after a restart on Help itself, the open measurement or the round. */
export function wayBack(): string {
  const id = openPlace();
  return underHelp() || (id ? `#/measure/${id}` : "#/round");
}
