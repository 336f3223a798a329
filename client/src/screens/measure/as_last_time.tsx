/* The last visit's cuff, limb and posture in one tap: only what was done alike can be compared.
   It offers and fills in; nothing is taken over before the tap, since a limb may have grown and a cuff be missing today. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { cm } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import type { Keeping } from "./keeping";
import { takenFromLast } from "./last_set";
import { setNow, type LastSet, type Open } from "./open";

/** What is offered, in the words of the questions below it. */
function words(last: LastSet): string {
  const { site, side, posture, limb_circumference_mm: limb, cuff_width_mm: width } = last;
  return [
    site && say(`site-${kebab(site)}`), side && say(`side-${side}`), posture && say(`posture-${kebab(posture)}`),
    limb !== undefined && say("summary-limb", { cm: cm(limb) }), width !== undefined && say("used-cuff", { mm: String(width) }),
  ].filter(Boolean).join(", ");
}

/** The offer; gone once everything stands as last time. */
export function AsLastTime({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element | null {
  const { last } = open;
  const now: LastSet = setNow(open);
  if (!last || Object.entries(last).every(([key, value]) => now[key as keyof LastSet] === value)) return null;
  return (
    <button type="button" class="button wide" onClick={() => keeping.act((head) => takenFromLast(head, last))}>
      {say("as-last-time", { what: words(last) })}
    </button>
  );
}
