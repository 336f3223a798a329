/* The one true line about what is where, as the phone's status says it, and whatever keeps it from being so. */
import type { JSX } from "preact";
import { hasWords, say } from "../contract/words";
import { dayAndTime } from "../parts/figures";
import { inTraining } from "../parts/training_ground";
import { kebab } from "../parts/word_ids";
import { thePhone } from "./place";

function told(prefix: string, code: string | undefined): string | undefined {
  if (!code) return undefined;
  const word = `${prefix}-${kebab(code)}`;
  return hasWords(word) ? say(word) : undefined;
}

/** Read out when it changes, without taking the focus. */
export function StatusLine(): JSX.Element | null {
  const { status, who } = thePhone();
  const { unsent, sending, lastSentMs, network, storage, needsYou, signInNeeded, signInToSend } = status.value;
  if (!who.value) return null;
  const when = lastSentMs === undefined ? undefined : dayAndTime(lastSentMs);
  const sent = when ? say("sync-all-sent-at", { when }) : say("sync-unsent", { count: 0 });
  const count = sending ? say("sync-sending") : unsent > 0 ? say("sync-unsent", { count: unsent }) : sent;
  const lines = [
    inTraining.value ? say("sync-of-record", { count }) : count,
    needsYou > 0 ? say("sync-needing-you", { count: needsYou }) : undefined,
    unsent > 0 || signInNeeded ? told("network", network) : undefined,
    told("storage", storage),
    signInNeeded ? say(signInToSend ? "sync-sign-in-to-send" : "sync-sign-in-needed") : undefined,
  ];
  return (
    <div role="status" class="small">
      {lines.filter(Boolean).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {signInNeeded && (
        <a class="link" href="#/sign-in">
          {say("sign-in-title")}
        </a>
      )}
    </div>
  );
}
