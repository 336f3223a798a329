/* Where a measurement has several sets: what the new one began with, the earlier ones folded to a line each, and, once the set now
   has readings, the way to a new one: what is changed here corrects how its readings were taken. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Keeping } from "./keeping";
import { setNow, toPart, type CuffSet, type Open } from "./open";
import { placeWords } from "./site_choice";

/** Why a set was begun, as far as it differs from the one before; "moved" when nothing does. */
export function whyBegun(before: CuffSet, now: CuffSet): "method" | "site" | "changed" | "moved" {
  if (before.method !== now.method) return "method";
  if (before.site !== now.site || before.side !== now.side) return "site";
  return before.cuff_width_mm === now.cuff_width_mm ? "moved" : "changed";
}

function setLine(set: CuffSet, n: number): string {
  const what = [
    say(`method-${set.method}`), placeWords(set),
    set.cuff_width_mm === undefined ? say("used-cuff-none") : say("used-cuff", { mm: String(set.cuff_width_mm) }),
    say("readings-count", { n: set.readings.length }),
  ].filter(Boolean).join(", ");
  return say("set-line", { n: String(n), what });
}

/** Nothing for a first set without readings. */
export function EarlierSets({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element | null {
  const { sets } = open.measurement;
  const now = setNow(open);
  const before = sets[sets.length - 2];
  if (!before && now.readings.length === 0) return null;
  return (
    <div class="stack">
      {sets.slice(0, -1).map((set, at) => <p class="small" key={at}>{setLine(set, at + 1)}</p>)}
      {before && <h2>{say(`set-began-${whyBegun(before, now)}`, { n: String(sets.length) })}</h2>}
      {now.readings.length > 0 && (
        <div class="note stack">
          <p>{say("set-has-readings", { n: now.readings.length })}</p>
          <button type="button" class="button" onClick={() => keeping.act((head) => ({ ...toPart(head, "readings"), sheet: { kind: "new_set" } }))}>
            {say("set-new")}
          </button>
        </div>
      )}
    </div>
  );
}
