/* What an entry of this phone is called, why it is where it is, and which come first. Pure; the words stand in words/. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { hasWords, say } from "../../contract/words";
import type { OutboxEntry, PatientCard } from "../../offline/journal";
import type { State } from "../../parts/state_word";
import { kebab } from "../../parts/word_ids";
import { patientOf } from "../animal/animals";
import { shownState } from "./entry_state";

/** Why it is where it is: by the server's code where there are words for it, else by what happened to it. */
export function reasonOf(entry: Pick<OutboxEntry, "code">, state: State): string | undefined {
  if (state === "waiting") return say("outbox-waits");
  if (!["held", "refused", "set_aside"].includes(state)) return undefined;
  const code = entry.code ? kebab(entry.code) : "";
  const word = [`entry-${code}`, `error-${code}`, `why-${code}`].find((one) => hasWords(one)) ?? `entry-${kebab(state)}`;
  return say(word);
}

/** The animal an entry speaks of: its id, whatever kind of entry it is. */
export function animalOf({ letter }: OutboxEntry): string | undefined {
  if (letter?.kind === "patient") return letter.amends ?? letter.id;
  return letter?.kind === "measurement" ? (letter.body as unknown as Measurement).patient : undefined;
}

/** What an entry is, by name. */
export function nameOf(entry: OutboxEntry, cards: readonly PatientCard[]): string {
  const { letter } = entry;
  if (!letter) return say("outbox-unreadable");
  const isChange = letter.amends !== undefined;
  const own = (letter.body as { name?: string }).name;
  if (letter.kind === "patient" && own) return say(isChange ? "outbox-patient-changed" : "outbox-patient", { name: own });
  if (letter.kind === "bag" && own) return say(isChange ? "outbox-bag-changed" : "outbox-bag", { name: own });
  const card = cards.find((one) => one.id === animalOf(entry));
  if (letter.kind !== "measurement" || !card) return say("outbox-other");
  return say("outcome" in letter.body ? "outbox-outcome" : "outbox-measurement", { name: patientOf(card).name });
}

const NEEDS_FIRST: Record<State, number> = { held: 0, refused: 0, set_aside: 0, sending: 1, waiting: 1, training: 1, stored: 2 };

/** What needs a person first, then what is only here, then the rest; each newest first. */
export function inNeed(entries: readonly OutboxEntry[], sending: boolean): OutboxEntry[] {
  const rank = (entry: OutboxEntry): number => NEEDS_FIRST[shownState(entry, sending)];
  return [...entries].sort((one, other) => rank(one) - rank(other) || other.number - one.number);
}
