/* On the round, small: this phone is not ready for a day without a network, and where that is mended. Says nothing while it is. */
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { say } from "../../contract/words";
import { checkReadiness, isReady, readiness } from "./readiness";

/** After the screen stands and the worker has had a moment; not again within this time. */
const CHECK_AFTER_MS = 2500;
const CHECK_AGAIN_MS = 20_000;

/** Looks again whenever the round is shown and the last look found something missing. */
function useLook(): void {
  useEffect(() => {
    const last = readiness.peek();
    const isOld = last === undefined || (!isReady() && Date.now() - last.at_ms > CHECK_AGAIN_MS);
    const timer = isOld ? setTimeout(() => void checkReadiness(), CHECK_AFTER_MS) : undefined;
    return () => clearTimeout(timer);
  }, []);
}

export function ReadyLine(): JSX.Element | null {
  useLook();
  if (isReady() !== false) return null;
  return (
    <p class="small">
      <a class="link" href="#/this-phone">
        {say("ready-not-line")}
      </a>
    </p>
  );
}
