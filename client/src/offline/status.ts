/**
 * The one true line: how much lies on this phone only, since when, and what stands in the way.
 * Every number is counted in the store at each look; a counter kept beside it would one day be wrong.
 */
import type { DataKey } from "./boxes.ts";
import { type Database, inOneReading } from "./database.ts";
import { madeAtMs } from "./ids.ts";
import type { NetworkTrouble, Status, StorageTrouble } from "./phone_types.ts";
import { openLetter } from "./reading.ts";
import type { EntryRow, MetaRow } from "./rows.ts";
import { storageTroubleOf } from "./trouble.ts";

/** What is not on the disk: how this window's own trying goes. */
export interface Trying {
  readonly sending: boolean;
  readonly signInNeeded: boolean;
  readonly signInToSend: boolean;
  readonly network?: NetworkTrouble | undefined;
  readonly storage?: StorageTrouble | undefined;
  readonly nextTryMs?: number | undefined;
}

export const NOT_TRYING: Trying = { sending: false, signInNeeded: false, signInToSend: false };

/**
 * Counts. Never rejects: where the store does not answer it is `last` with that trouble.
 * @param key opens the oldest entry for its filing time; without it the time in its id has to do
 */
export async function statusNow(
  outbox: Database,
  key: DataKey | undefined,
  trying: Trying,
  last: Status,
): Promise<Status> {
  return readStatus(outbox, key, trying).catch((thrown: unknown) => ({
    ...last,
    ...trying,
    storage: storageTroubleOf(thrown) ?? ("lost" as const),
  }));
}

/**
 * Counts anew at each call and shows the answer; resolves when a count begun no earlier than this one is shown. Of two under way the
 * later one is shown; whoever waits for the earlier one waits for it too.
 */
export function counting(count: () => Promise<Status>, show: (status: Status) => void): () => Promise<void> {
  let begun = 0;
  let latest: Promise<void> = Promise.resolve();
  async function countAndShow(mine: number): Promise<void> {
    const status = await count();
    if (mine !== begun) return latest;
    show(status);
  }
  return () => {
    begun += 1;
    latest = countAndShow(begun);
    return latest;
  };
}

/** Whether a screen that shows `one` need not be drawn anew for `other`: most commits are a key of the pad and change no count. */
export function isSameStatus(one: Status, other: Status): boolean {
  const names = Object.keys({ ...one, ...other }) as (keyof Status)[];
  return names.every((name) => one[name] === other[name]);
}

async function readStatus(outbox: Database, key: DataKey | undefined, trying: Trying): Promise<Status> {
  const { unsent, own, needsYou, oldest, facts } = await count(outbox, key);
  const oldestMs = oldest === undefined ? undefined : await filedMs(oldest, key);
  return {
    unsent,
    needsYou,
    unsentElsewhere: unsent - own,
    ...trying,
    sending: trying.sending && unsent > 0, // a run that only fetches sends nothing
    ...(oldestMs === undefined ? {} : { oldestUnsentMs: oldestMs }),
    ...factOf(facts, "sent_ms", "lastSentMs"),
    ...factOf(facts, "pulled_ms", "lastPulledMs"),
    ...factOf(facts, "persisted", "keptByBrowser"),
  };
}

function count(outbox: Database, key: DataKey | undefined) {
  return inOneReading(outbox, ["entries", "meta"], async (connection) => {
    const transaction = connection.transaction(["entries", "meta"]);
    const entries = transaction.objectStore("entries");
    const waiting = entries.index("by_state");
    const ours = key === undefined ? undefined : IDBKeyRange.only([key.practice, "waiting"]);
    const [unsent, own, needsYou, oldest, facts] = await Promise.all([
      waiting.count("waiting"),
      ours === undefined ? 0 : entries.index("by_practice_state").count(ours),
      entries.index("by_code").count(),
      waiting.get("waiting") as Promise<EntryRow | undefined>, // the lowest number of that state
      transaction.objectStore("meta").getAll() as Promise<MetaRow[]>,
    ]);
    return { unsent, own, needsYou, oldest, facts };
  });
}

async function filedMs(row: EntryRow, key: DataKey | undefined): Promise<number> {
  const letter = key?.id === row.box.key ? await openLetter(key, row) : undefined;
  return letter?.made_at_ms ?? madeAtMs(row.id);
}

function factOf(facts: readonly MetaRow[], name: string, as: keyof Status): Partial<Status> {
  const value = facts.find((fact) => fact.name === name)?.value;
  return value === undefined ? {} : { [as]: value };
}
