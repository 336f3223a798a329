/**
 * The pen: every write to the phone's disk is in this file, each one transaction, made of boxes sealed beforehand.
 * All may run twice without harm. Nothing here reads typed words, and no waiting entry is ever removed.
 */
import { type Database, inOneTransaction } from "./database.ts";
import type { Box } from "./boxes.ts";
import type { CursorRow, DraftRow, EntryRow, LetterRow, MetaRow, WrapRow } from "./rows.ts";
import { PhoneTrouble } from "./trouble.ts";

/** Writes or rewrites a draft. @throws PhoneTrouble `already_filed` when a letter was filed from it */
export async function putDraft(outbox: Database, row: DraftRow): Promise<void> {
  let isFiled = false;
  await inOneTransaction(outbox, ["entries", "drafts"], ({ entries, drafts }) => {
    drafts.put(row); // asked together with the question whether it may stay: a second way to the disk would delay every key
    const filed = entries.index("by_id").getKey(row.id);
    filed.onsuccess = () => {
      isFiled = filed.result !== undefined;
      if (isFiled) drafts.delete(row.id);
    };
  });
  if (isFiled) throw new PhoneTrouble("already_filed");
}

/** Rewrites a draft that lies there still: one that was filed or dropped meanwhile stays gone. */
export function rewriteDraft(outbox: Database, row: DraftRow): Promise<void> {
  return inOneTransaction(outbox, ["drafts"], ({ drafts }) => {
    const there = drafts.getKey(row.id);
    there.onsuccess = () => {
      if (there.result !== undefined) drafts.put(row);
    };
  });
}

export function removeDraft(outbox: Database, id: string): Promise<void> {
  return inOneTransaction(outbox, ["drafts"], ({ drafts }) => {
    drafts.delete(id);
  });
}

/**
 * Adds an entry and removes what it was made from, its draft and a setting, in one transaction; answers the entry's number.
 * The same entry twice is one entry: a repeat after a lost connection finds what the first try wrote.
 * @throws PhoneTrouble `already_filed` when another letter has this id; draft and setting are there still
 */
export async function addEntry(outbox: Database, row: Omit<EntryRow, "number">, draft?: string, setting?: string): Promise<number> {
  let number = 0;
  const stores = ["entries", "drafts", ...(setting === undefined ? [] : (["meta"] as const))] as const;
  await inOneTransaction<"entries" | "drafts" | "meta">(outbox, stores, ({ entries, drafts, meta }) => {
    const found = entries.index("by_id").get(row.id) as IDBRequest<EntryRow | undefined>;
    found.onsuccess = () => {
      if (found.result && found.result.sha !== row.sha) return; // what this one was made from is nowhere else: it stays
      if (draft !== undefined) drafts.delete(draft);
      if (setting !== undefined) meta.delete(setting);
      if (found.result) return void (number = found.result.number);
      const added = entries.add(row);
      added.onsuccess = () => (number = added.result as number);
    };
  });
  if (number === 0) throw new PhoneTrouble("already_filed");
  return number;
}

export function putMeta(
  outbox: Database,
  rows: readonly MetaRow[],
  durability: "strict" | "relaxed" = "strict",
): Promise<void> {
  const write = ({ meta }: { meta: IDBObjectStore }) => {
    for (const row of rows) meta.put(row);
    return undefined;
  };
  return inOneTransaction(outbox, ["meta"], write, durability);
}

/** The name of the row by which the self-test tries the store. */
export const PROBE = "probe";

/** The self-test has read its row back. */
export function removeProbe(outbox: Database): Promise<void> {
  return inOneTransaction(outbox, ["meta"], ({ meta }) => {
    meta.delete(PROBE);
  });
}

/** The server knows by now that nobody is signed in here. */
export function removeSignOutDue(outbox: Database): Promise<void> {
  return inOneTransaction(outbox, ["meta"], ({ meta }) => {
    meta.delete("sign_out_due");
  });
}

/**
 * Keeps a wrapped data key, unless the practice has another data key here already (a second window was faster): two
 * keys for one practice would make boxes that the other half cannot open. Read the keys again afterwards.
 */
export function putWrap(outbox: Database, wrap: WrapRow): Promise<void> {
  return inOneTransaction(outbox, ["keys"], ({ keys }) => {
    const all = keys.getAll(IDBKeyRange.bound([wrap.practice], [wrap.practice, []])) as IDBRequest<WrapRow[]>;
    all.onsuccess = () => {
      if (all.result.every((other) => other.data_key === wrap.data_key)) keys.put(wrap);
    };
  });
}

/** Keeps who signed in; a sign-out the server had not heard of is past. */
export function putSignIn(outbox: Database, rows: readonly MetaRow[]): Promise<void> {
  return inOneTransaction(outbox, ["meta"], ({ meta }) => {
    for (const row of rows) meta.put(row);
    meta.delete("sign_out_due");
  });
}

/** Forgets who signed in, and notes that the server has not been told yet. Keys, drafts and entries stay. */
export function putSignOut(outbox: Database): Promise<void> {
  return inOneTransaction(outbox, ["meta"], ({ meta }) => {
    meta.delete("person");
    meta.put({ name: "sign_out_due", value: true });
  });
}

/** What the server said to one entry. */
export interface Mark {
  readonly number: number;
  readonly state: "stored" | "held" | "refused";
  readonly position?: number;
  readonly code?: string;
  readonly path?: string;
  readonly answerBox?: Box;
}

/** Writes down the server's answers. An entry once stored stays stored. */
export function putAnswers(outbox: Database, marks: readonly Mark[], atMs: number): Promise<void> {
  return inOneTransaction(outbox, ["entries", "meta"], ({ entries, meta }) => {
    for (const mark of marks) change(entries, mark.number, (row) => answered(row, mark));
    meta.put({ name: "sent_ms", value: atMs });
  });
}

function answered(row: EntryRow, mark: Mark): EntryRow {
  if (row.state === "stored") return row;
  const { code: _code, path: _path, ...rest } = row;
  const next: EntryRow = { ...rest, state: mark.state };
  if (mark.position !== undefined) next.position = mark.position;
  if (mark.code !== undefined) next.code = mark.code;
  if (mark.path !== undefined) next.path = mark.path;
  if (mark.answerBox !== undefined) next.answer_box = mark.answerBox;
  return next;
}

/** Marks own entries that came back in a pull: that they are in the record is proven, whatever their answer was. */
export function putConfirmed(
  outbox: Database,
  found: readonly { id: string; sha: string; position: number }[],
): Promise<void> {
  return inOneTransaction(outbox, ["entries"], ({ entries }) => {
    for (const { id, sha, position } of found) {
      const own = entries.index("by_id").get(id) as IDBRequest<EntryRow | undefined>;
      own.onsuccess = () => {
        const row = own.result;
        if (row?.sha !== sha || row.state === "stored") return;
        entries.put(answered(row, { number: row.number, state: "stored", position }));
      };
    }
  });
}

/** Writes down how often an entry has failed by its own fault; `code` is written once it is set aside. */
export function putTries(outbox: Database, number: number, tries: number, code: string | undefined): Promise<void> {
  return inOneTransaction(outbox, ["entries"], ({ entries }) => {
    change(entries, number, (row) => failed(row, tries, code));
  });
}

/** An entry answered meanwhile (a pull brought it) needs nobody, whatever its own try met. */
function failed(row: EntryRow, tries: number, code: string | undefined): EntryRow {
  if (row.state !== "waiting") return row;
  return { ...row, tries, ...(code === undefined ? {} : { code }) };
}

/**
 * The server's record began anew (restored from a copy): every entry it once took is offered again.
 * All of them, not only those above its head: positions are given out again, so a number proves nothing.
 */
export function offerAgain(outbox: Database, practice: string, epoch: string): Promise<void> {
  return inOneTransaction(outbox, ["entries", "meta"], ({ entries, meta }) => {
    for (const state of ["stored", "held"]) {
      const taken = entries.index("by_practice_state").openCursor(IDBKeyRange.only([practice, state]));
      taken.onsuccess = () => {
        if (taken.result === null) return;
        taken.result.update(asWaiting(taken.result.value as EntryRow));
        taken.result.continue();
      };
    }
    meta.put({ name: `epoch:${practice}`, value: epoch });
  });
}

/** Keeps a pulled page and the cursor that certifies it, together: a cursor must never outrun its rows. */
export function putPage(practice: Database, rows: readonly LetterRow[], cursor: CursorRow): Promise<void> {
  return inOneTransaction(
    practice,
    ["letters", "cursor"],
    (stores) => {
      for (const row of rows) stores.letters.put(row);
      stores.cursor.put(cursor);
    },
    "relaxed", // can be pulled again
  );
}

function asWaiting(row: EntryRow): EntryRow {
  const { position: _position, code: _code, path: _path, answer_box: _answer, ...rest } = row;
  return { ...rest, state: "waiting" };
}

function change(entries: IDBObjectStore, number: number, next: (row: EntryRow) => EntryRow): void {
  const found = entries.get(number) as IDBRequest<EntryRow | undefined>;
  found.onsuccess = () => {
    if (found.result !== undefined) entries.put(next(found.result));
  };
}
