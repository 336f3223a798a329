/* Says on the result that the former animal's limb was taken out, so that it is measured or left out knowingly. Takes nothing out. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { dayOnly } from "../../parts/figures";
import { limbTakenOut } from "./limb_from";
import type { Open } from "./open";

/** The sentence; nothing where no limb was taken out, or one was measured since. */
export function LimbOut({ open }: { open: Open }): JSX.Element | null {
  const out = limbTakenOut(open);
  return out ? <p class="note" role="status">{say("limb-out", { name: out.name, day: dayOnly(out.day) })}</p> : null;
}
