/**
 * The store port of `sync.ts` over the two databases: opens boxes on the way out, seals them on the way in.
 * Everything is sealed before a transaction opens. A box that does not open is set aside and never blocks the others.
 */
import { type Box, type DataKey, openBytes, seal } from "./boxes.ts";
import { FRAME_BYTES, type Outgoing, type PulledEntry } from "./bundle.ts";
import type { Place } from "./chain.ts";
import { type Database, inOneReading } from "./database.ts";
import { TRIES_UNTIL_ASIDE } from "./pace.ts";
import type { Answer } from "./replies.ts";
import type { CursorRow, EntryRow, LetterRow, MetaRow, PulledContent } from "./rows.ts";
import type { SyncStore } from "./sync.ts";
import * as writes from "./writes.ts";

/** Where a practice's rows lie, and what opens them. `committed` is called after each commit. */
export interface Shelf {
  readonly outbox: Database;
  readonly practiceDatabase: Database;
  readonly key: DataKey;
  readonly committed: () => void;
}

export function syncStore(shelf: Shelf): SyncStore {
  const { outbox, practiceDatabase, key, committed } = shelf;
  const then = async (commit: Promise<void>) => {
    await commit;
    committed();
  };
  const cursor = async () => (await readCursor(practiceDatabase)) as Place | undefined;
  return {
    waiting: (limit, without) => readWaiting(shelf, limit, without),
    keepAnswers: async (answers, atMs) => then(writes.putAnswers(outbox, await marksOf(key, answers), atMs)),
    countTry: (entry, tries) =>
      then(writes.putTries(outbox, entry, tries, tries >= TRIES_UNTIL_ASIDE ? "set_aside" : undefined)),
    knownEpoch: async () => (await readMeta(outbox, `epoch:${key.practice}`))?.value as string | undefined,
    offerAgain: (epoch) => then(writes.offerAgain(outbox, key.practice, epoch)),
    cursor,
    keepCursor: (place) => then(writes.putPage(practiceDatabase, [], asRow(place))),
    keepPage: (entries, place) => then(keepPage(shelf, entries, place)),
    keepContact: ({ clockOffsetMs, pulledMs }) =>
      then(writes.putMeta(outbox, facts({ clock_offset_ms: clockOffsetMs, pulled_ms: pulledMs }), "relaxed")),
  };
}

export async function readMeta(outbox: Database, name: string): Promise<MetaRow | undefined> {
  return inOneReading(outbox, ["meta"], (connection) => connection.get("meta", name));
}

export async function readCursor(practiceDatabase: Database): Promise<CursorRow | undefined> {
  return inOneReading(practiceDatabase, ["cursor"], (connection) => connection.get("cursor", "cursor"));
}

/**
 * The highest position this phone has seen, 0 where that cannot be read: a practice's database can be pulled again, and
 * its trouble must not keep a letter from being filed. A basis too low only shows two amendments side by side.
 */
export async function readBasis(practiceDatabase: Database): Promise<number> {
  return (await readCursor(practiceDatabase).catch(() => undefined))?.position ?? 0;
}

function asRow({ epoch, position, chain }: Place): CursorRow {
  return { name: "cursor", epoch, position, chain };
}

function facts(values: Record<string, number | undefined>): MetaRow[] {
  return Object.entries(values).flatMap(([name, value]) => (value === undefined ? [] : [{ name, value }]));
}

async function readWaiting(
  shelf: Shelf,
  limit: { entries: number; bytes: number },
  without: ReadonlySet<number>,
): Promise<Outgoing[]> {
  const { outbox, key, committed } = shelf;
  const rows = await waitingRows(outbox, key.practice, limit.entries, without);
  const outgoing: Outgoing[] = [];
  let bytes = FRAME_BYTES;
  for (const row of rows) {
    const letter = await openBytes(key, "entries", row.id, row.box).catch(() => undefined);
    if (letter === undefined) {
      await writes.putTries(outbox, row.number, row.tries + 1, "unreadable").then(committed);
      continue;
    }
    bytes += letter.length + FRAME_BYTES;
    if (bytes > limit.bytes && outgoing.length > 0) break;
    outgoing.push({ number: row.number, id: row.id, sha: row.sha, tries: row.tries, letter });
  }
  // All of these unreadable: they are marked now, so the next look finds others or none.
  return outgoing.length === 0 && rows.length > 0 ? readWaiting(shelf, limit, without) : outgoing;
}

/** The oldest rows not resting; those set aside only when nothing else waits, and then one alone. */
async function waitingRows(
  outbox: Database,
  practice: string,
  most: number,
  without: ReadonlySet<number>,
): Promise<EntryRow[]> {
  const rows = await inOneReading(outbox, ["entries"], async (connection) => {
    const { store } = connection.transaction("entries");
    const marked = await store.index("by_code").count();
    const range = IDBKeyRange.only([practice, "waiting"]);
    return (await store.index("by_practice_state").getAll(range, most + without.size + marked)) as EntryRow[];
  });
  const ready = rows.filter((row) => !without.has(row.number));
  const fresh = ready.filter((row) => row.code === undefined).slice(0, most);
  if (fresh.length > 0) return fresh;
  return ready.filter((row) => row.code !== "unreadable").slice(0, 1);
}

function marksOf(key: DataKey, answers: readonly { entry: Outgoing; answer: Answer }[]): Promise<writes.Mark[]> {
  return Promise.all(answers.map(({ entry, answer }) => markOf(key, entry, answer)));
}

async function markOf(key: DataKey, entry: Outgoing, answer: Answer): Promise<writes.Mark> {
  const { assessment, ...said } = answer;
  if (assessment === undefined) return { number: entry.number, ...said };
  return { number: entry.number, ...said, answerBox: await seal(key, "answers", entry.id, assessment) };
}

/** Own entries are marked first: killed in between, the page comes again; the other way round they wait for ever. */
async function keepPage(shelf: Shelf, entries: readonly PulledEntry[], place: Place): Promise<void> {
  const rows = await Promise.all(entries.map((entry) => letterRow(shelf.key, place.epoch, entry)));
  const found = rows.map((row, at) => ({
    id: row.id,
    sha: (entries[at] as PulledEntry).envelope.sha,
    position: row.position,
  }));
  await writes.putConfirmed(shelf.outbox, found);
  await writes.putPage(shelf.practiceDatabase, rows, asRow(place));
}

async function letterRow(key: DataKey, epoch: string, { envelope, letter }: PulledEntry): Promise<LetterRow> {
  const text = new TextDecoder().decode(letter);
  const { id, kind } = namesIn(text);
  const { position, after, chain, sha, received_at_ms, flags, assessment } = envelope;
  const content: PulledContent = {
    letter: text,
    sha,
    ...(received_at_ms === undefined ? {} : { received_at_ms }),
    ...(flags === undefined ? {} : { flags }),
    ...(assessment === undefined ? {} : { assessment }),
  };
  const box: Box = await seal(key, "letters", `${epoch}/${position}`, content);
  return { epoch, position, id, kind, after, chain, box };
}

/** A letter this build cannot read is kept all the same: a newer build will. */
function namesIn(text: string): { id: string; kind: string } {
  try {
    const { id, kind } = JSON.parse(text) as { id?: unknown; kind?: unknown };
    return { id: typeof id === "string" ? id : "", kind: typeof kind === "string" ? kind : "unknown" };
  } catch {
    return { id: "", kind: "unknown" };
  }
}
