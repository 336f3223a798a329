/* A newer build that waits: offered as one line, taken at a tap. It never takes over under an open measurement by itself. */
import { signal } from "@preact/signals";
import type { JSX } from "preact";
import { say } from "../contract/words";

/** The worker that waits; undefined when there is none. */
export const waitingWorker = signal<ServiceWorker | undefined>(undefined);

export function UpdateLine(): JSX.Element | null {
  const worker = waitingWorker.value;
  if (!worker) return null;
  return (
    <div class="note update" role="status">
      <p>{say("update-ready")}</p>
      <button type="button" class="button" onClick={() => worker.postMessage("take over")}>
        {say("update-take")}
      </button>
    </div>
  );
}
