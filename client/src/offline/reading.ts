/**
 * Reads the phone's rows back into letters, drafts and entries. It writes nothing.
 * What lies on the disk is treated as strange until its box opened: a row that does not open is left out of lists,
 * and shown without its letter in the outbox.
 */
import { type Box, type DataKey, open, openBytes } from "./boxes.ts";
import { inOneReading } from "./database.ts";
import type { Draft, Letter, OutboxEntry } from "./phone_types.ts";
import type { Known } from "./projection.ts";
import type { DraftRow, EntryRow, LetterRow, PulledContent } from "./rows.ts";
import { type Shelf, readCursor } from "./sync_store.ts";

/** Letters once opened: they never change, so opening them again at each look would only warm the phone. */
export type Opened = Map<string, Promise<Known | undefined>>;

/** Measurements not filed yet, newest first. */
export async function readDrafts(shelf: Shelf): Promise<Draft[]> {
  return (await readAllDrafts(shelf)).filter((draft) => !isForm(draft));
}

/** Half-typed forms, newest first. */
export async function readForms(shelf: Shelf): Promise<Draft[]> {
  return (await readAllDrafts(shelf)).filter(isForm);
}

function isForm({ content }: Draft): boolean {
  return (content as { form?: unknown } | null)?.form === true;
}

async function readAllDrafts({ outbox, key }: Shelf): Promise<Draft[]> {
  const rows: DraftRow[] = await inOneReading(outbox, ["drafts"], (connection) => connection.getAll("drafts"));
  const drafts = await Promise.all(rows.map((row) => openDraft(key, row)));
  return drafts.filter((draft) => draft !== undefined).sort((a, b) => b.updatedMs - a.updatedMs);
}

async function openDraft(key: DataKey, row: DraftRow): Promise<Draft | undefined> {
  const inside = await tryOpen<{ updatedMs: number; content: unknown }>(key, "drafts", row.id, row.box);
  return inside && { id: row.id, updatedMs: inside.updatedMs, content: inside.content };
}

/** Own entries of this practice, newest first. */
export async function readOutbox(shelf: Shelf): Promise<OutboxEntry[]> {
  const rows = await ownRows(shelf);
  return (await Promise.all(rows.map((row) => openEntry(shelf.key, row)))).reverse();
}

async function openEntry(key: DataKey, row: EntryRow): Promise<OutboxEntry> {
  const { number, id, practice, state, position, code, path, tries } = row;
  const letter = await openLetter(key, row);
  const answer = row.answer_box && (await tryOpen<object>(key, "answers", id, row.answer_box));
  return {
    ...{ number, id, practice, state, tries },
    ...(position === undefined ? {} : { position }),
    ...(code === undefined ? {} : { code }),
    ...(path === undefined ? {} : { path }),
    ...(letter === undefined ? {} : { letter }),
    ...(answer === undefined ? {} : { serverAssessment: answer }),
  };
}

/** Every letter known here: pulled ones, then own ones. The same letter may come twice. */
export async function readKnown(shelf: Shelf, opened: Opened): Promise<Known[]> {
  const { practiceDatabase } = shelf;
  const cursor = await readCursor(practiceDatabase);
  const pulled: LetterRow[] = await inOneReading(practiceDatabase, ["letters"], (connection) =>
    connection.getAll("letters"),
  );
  const own = await ownRows(shelf);
  const known = await Promise.all([
    ...pulled.map((row) =>
      once(opened, `${cursor?.epoch}|${row.epoch}/${row.position}`, () => openPulled(shelf.key, row, cursor?.epoch)),
    ),
    ...own.map((row) => once(opened, nameOfOwn(row), () => openOwn(shelf.key, row))),
  ]);
  return known.filter((one) => one !== undefined);
}

/** Its letter never changes; where it stands does, and after a restore of the server even its position. */
function nameOfOwn({ number, state, position, code }: EntryRow): string {
  return `own/${number}/${state}/${position}/${code}`;
}

function once(opened: Opened, name: string, work: () => Promise<Known | undefined>): Promise<Known | undefined> {
  const found = opened.get(name) ?? work();
  opened.set(name, found);
  return found;
}

async function openPulled(key: DataKey, row: LetterRow, epoch: string | undefined): Promise<Known | undefined> {
  const inside = await tryOpen<PulledContent>(key, "letters", `${row.epoch}/${row.position}`, row.box);
  const letter = inside && asLetter(inside.letter);
  if (inside === undefined || letter === undefined) return undefined;
  const stands = row.epoch === epoch ? { inRecord: true, position: row.position } : { inRecord: false };
  return { letter, ...stands, ...(inside.assessment === undefined ? {} : { serverAssessment: inside.assessment }) };
}

async function openOwn(key: DataKey, row: EntryRow): Promise<Known | undefined> {
  const entry = await openEntry(key, row);
  if (entry.letter === undefined) return undefined;
  const { letter, number, state, position, code, serverAssessment } = entry;
  return {
    ...{ letter, number, state, inRecord: state === "stored" },
    ...(position === undefined ? {} : { position }),
    ...(code === undefined ? {} : { code }),
    ...(serverAssessment === undefined ? {} : { serverAssessment }),
  };
}

async function ownRows({ outbox, key }: Shelf): Promise<EntryRow[]> {
  const range = IDBKeyRange.bound([key.practice], [key.practice, []]); // every state: [] sorts behind all words
  const rows: EntryRow[] = await inOneReading(outbox, ["entries"], (connection) =>
    connection.getAllFromIndex("entries", "by_practice_state", range),
  );
  return rows.sort((a, b) => a.number - b.number);
}

/** The letter in an entry's box; undefined when it does not open. */
export async function openLetter(key: DataKey, row: EntryRow): Promise<Letter | undefined> {
  const bytes = await openBytes(key, "entries", row.id, row.box).catch(() => undefined);
  return bytes && asLetter(new TextDecoder().decode(bytes));
}

function asLetter(text: string): Letter | undefined {
  try {
    const letter = JSON.parse(text) as Letter;
    return typeof letter.id === "string" && typeof letter.body === "object" ? letter : undefined;
  } catch {
    return undefined;
  }
}

async function tryOpen<Inside>(key: DataKey, store: string, row: string, box: Box): Promise<Inside | undefined> {
  return open(key, store, row, box).then((inside) => inside as Inside, () => undefined);
}
