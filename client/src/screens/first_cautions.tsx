/* What to know before relying on it: shown at first start until it was read, and on every result. Never in the way of a tap. */
import type { JSX } from "preact";
import { signal } from "@preact/signals";
import { say } from "../contract/words";

const PLACE = "quietcuff-cautions-read";
const CARES = ["support", "no-diagnosis", "local-rules", "sedated", "emergency", "comfort", "own-figures"] as const;

function wasRead(): boolean {
  try {
    return localStorage.getItem(PLACE) === "yes";
  } catch {
    return false;
  }
}

const read = signal(wasRead());

function markRead(): void {
  read.value = true;
  try {
    localStorage.setItem(PLACE, "yes");
  } catch {
    /* Shown again next time: better once too often than never. */
  }
}

/** The cautions as a list. */
export function Cares(): JSX.Element {
  return (
    <ul class="stack small">
      {CARES.map((care) => (
        <li key={care}>{say(`care-${care}`)}</li>
      ))}
    </ul>
  );
}

/** The cautions at first start, until they were read. */
export function FirstCautions(): JSX.Element | null {
  if (read.value) return null;
  return (
    <section class="note stack" aria-labelledby="first-cautions">
      <h2 id="first-cautions">{say("first-cautions-title")}</h2>
      <Cares />
      <button type="button" class="button wide" onClick={markRead}>
        {say("first-cautions-seen")}
      </button>
    </section>
  );
}
