/* A newer build that waits, or that another window has taken: offered as one line, loaded at a tap and never by itself. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { update } from "./update";

export function UpdateLine(): JSX.Element | null {
  const take = update.value;
  if (!take) return null;
  return (
    <div class="note update stack" role="status">
      <p>{say("update-ready")}</p>
      <button type="button" class="button" onClick={take}>
        {say("update-take")}
      </button>
    </div>
  );
}
