/* What comes before any number: look at the animal, and whom to call. Stands over the result, and folded over the keys while measuring.
   It is announced once when it appears. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Urgent } from "./urgent";

const LINES: Record<Urgent, readonly string[]> = {
  highest: ["urgent-highest-signs", "urgent-highest-then", "urgent-local"],
  low: ["urgent-low-signs", "urgent-low-else", "urgent-local"],
  no_sound: ["urgent-low-signs", "urgent-no-sound-else", "urgent-local"],
};

const TITLES: Record<Urgent, string> = { highest: "urgent-highest", low: "urgent-low", no_sound: "urgent-no-sound" };

/** The whole panel. */
export function UrgentPanel({ urgent }: { urgent: Urgent }): JSX.Element {
  return (
    <div class="urgent stack" role="alert">
      <h2>{say(TITLES[urgent])}</h2>
      {LINES[urgent].map((word) => <p key={word}>{say(word)}</p>)}
    </div>
  );
}

/** What to look at and whom to call in one line, the rest by one tap: while measuring the keys must stay in reach. */
export function UrgentFolded({ urgent }: { urgent: Urgent }): JSX.Element {
  return (
    <details class="more urgent">
      <summary>
        <span role="alert">{say(`${TITLES[urgent]}-folded`)}</span>
      </summary>
      <div class="stack">{LINES[urgent].map((word) => <p key={word}>{say(word)}</p>)}</div>
    </details>
  );
}
