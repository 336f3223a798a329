/* What to know before relying on it: shown before the first use by each person on this phone until they have read it, in Help
   and on every result. Never in the way of a tap. */
import type { JSX } from "preact";
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { say } from "../../contract/words";
import { theRecord } from "../place";
import { Noted } from "./noted";
import { useRead } from "../use_read";

const CARES = ["support", "no-diagnosis", "local-rules", "sedated", "emergency", "comfort", "own-figures"] as const;

/** Read on *Sign in*, where nobody knows yet by whom: it counts for the one who signs in next, and for no other. */
const readBefore = signal(false);

function placeOf(person: string): string {
  return `cautions_read/${person}`;
}

function markRead(person: string | undefined): void {
  if (person === undefined) readBefore.value = true;
  // kept or shown again next time: better once too often than never
  else void theRecord().remember(placeOf(person), true).catch(() => undefined);
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

/** Has this person read them on this phone? undefined while that is looked up. */
function useWasRead(person: string | undefined): boolean | undefined {
  const kept = useRead(async () => (person === undefined ? false : (await theRecord().recall(placeOf(person))) === true), [person]);
  useEffect(() => {
    if (person === undefined || !readBefore.peek()) return;
    readBefore.value = false;
    markRead(person);
  }, [person]);
  return person === undefined ? readBefore.value : kept;
}

/** The cautions at first start, until they were read; `folded` to a line where there is work to do above them. */
export function FirstCautions({ folded }: { folded?: boolean }): JSX.Element | null {
  const person = theRecord().who.value?.person;
  if (useWasRead(person) !== false) return null;
  return (
    <Noted id="first-cautions" title={say("first-cautions-title")} folded={folded}>
      <Cares />
      <button type="button" class="button wide" onClick={() => markRead(person)}>
        {say("first-cautions-seen")}
      </button>
    </Noted>
  );
}
