/* Stopping before the series is complete: why, in one tap, and on to the result with what there is. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { kebab } from "../../parts/word_ids";
import type { Keeping } from "./keeping";
import { withoutSheet, type WhyStopped } from "./open";
import { stopped } from "./series";

/** What ends a series that was begun, in the order of how often it does. */
const REASONS = [
  "too_distressed", "bite_or_scratch", "not_safe", "in_pain", "breathing", "not_responsive", "equipment", "no_cuff", "owner_refused", "other",
] as const satisfies readonly WhyStopped[];

export function StopHere({ keeping }: { keeping: Keeping }): JSX.Element {
  return (
    <>
      <h2>{say("stop-title")}</h2>
      <p class="small">{say("stop-kept")}</p>
      <div class="reasons">
        {REASONS.map((why) => (
          <button key={why} type="button" class="button key" onClick={() => keeping.act((head) => stopped(head, why))}>
            {say(`why-stopped-${kebab(why)}`)}
          </button>
        ))}
      </div>
      <button type="button" class="button key" onClick={() => keeping.act(withoutSheet)}>
        {say("readings-keys")}
      </button>
    </>
  );
}
