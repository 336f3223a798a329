/**
 * The rows on the phone's disk and the two databases they lie in.
 * `quietcuff-outbox` is frozen at version 1: no upgrade may ever rewrite a waiting entry. A practice's database is
 * disposable: everything in it can be pulled again. Only ids, positions, counts, states and times lie in clear.
 */
import type { Box } from "./boxes.ts";
import type { EntryState } from "./phone_types.ts";

/** The data key of a practice, wrapped for one person. */
export interface WrapRow {
  practice: string;
  person: string;
  kind: "phone";
  data_key: string;
  key: CryptoKey;
  wrapped: ArrayBuffer;
  iv: Uint8Array<ArrayBuffer>;
}

/** A filed letter; `number` is given by the store at adding, dense from 1. `box` holds the letter's exact bytes. */
export interface EntryRow {
  number: number;
  id: string;
  practice: string;
  sha: string;
  state: EntryState;
  position?: number;
  code?: string;
  path?: string;
  tries: number;
  box: Box;
  /** The server's own assessment, where it differs. */
  answer_box?: Box;
}

export interface DraftRow {
  id: string;
  box: Box;
}

/** One fact by name: `value` in clear for ids, counts and times, `box` for everything else. */
export interface MetaRow {
  name: string;
  value?: string | number | boolean;
  box?: Box;
}

/** A pulled letter. Rows of an older epoch stay: the server may have lost what they hold. */
export interface LetterRow {
  epoch: string;
  position: number;
  id: string;
  kind: string;
  after: number;
  chain: string;
  box: Box;
}

/** How far this phone has read, written together with the rows it speaks of. */
export interface CursorRow {
  name: "cursor";
  epoch: string;
  position: number;
  chain: string;
}

/** What the box of a pulled letter holds. `letter` is the exact text of its line. */
export interface PulledContent {
  letter: string;
  sha: string;
  received_at_ms?: number;
  flags?: readonly string[];
  assessment?: object;
}

/** A database by name and how its first version is laid out. */
export interface Layout {
  readonly name: string;
  readonly version: number;
  readonly build: (database: IDBDatabase) => void;
}

export const OUTBOX: Layout = {
  name: "quietcuff-outbox",
  version: 1,
  build(database) {
    database.createObjectStore("keys", { keyPath: ["practice", "person", "kind"] });
    const entries = database.createObjectStore("entries", { keyPath: "number", autoIncrement: true });
    entries.createIndex("by_id", "id", { unique: true });
    entries.createIndex("by_state", "state");
    entries.createIndex("by_practice_state", ["practice", "state"]);
    entries.createIndex("by_code", "code"); // holds only rows that have one: those that need a person
    database.createObjectStore("drafts", { keyPath: "id" });
    database.createObjectStore("meta", { keyPath: "name" });
  },
};

/** The disposable database of one practice. */
export function practiceLayout(practice: string): Layout {
  return {
    name: `quietcuff-practice-${practice}`,
    version: 1,
    build(database) {
      database.createObjectStore("letters", { keyPath: ["epoch", "position"] });
      database.createObjectStore("cursor", { keyPath: "name" });
    },
  };
}
