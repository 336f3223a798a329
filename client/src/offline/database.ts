/**
 * Opens a database and runs one transaction at a time in it, and notices when the browser has let go of it:
 * phones drop the connection while the app is in the background, and calls then hang or throw.
 * Each step gets 3 s; after that the database is opened once more, then the trouble is told, not hidden.
 */
import { type IDBPDatabase, openDB, unwrap } from "idb";
import type { StorageTrouble } from "./phone_types.ts";
import type { Layout } from "./rows.ts";
import { PhoneTrouble } from "./trouble.ts";

/** A database that can be opened again when it was lost. */
export interface Database {
  connection(): Promise<IDBPDatabase>;
  letGo(): void;
}

/** How long one step may take before the connection counts as lost. */
export const WATCHDOG_MS = 3000;

/** VersionError: a newer window has changed the layout, and only a reload brings this one to it. */
const WORDS: Readonly<Record<string, StorageTrouble>> = { QuotaExceededError: "full", VersionError: "reload_needed" };

type Stores<Name extends string> = Record<Name, IDBObjectStore>;

/** @param tell hears `reload_needed` when a newer window wants to change the layout and this one has let go */
export function database(layout: Layout, tell: (trouble: StorageTrouble) => void, watchdogMs = WATCHDOG_MS): Database {
  let opened: Promise<IDBPDatabase> | undefined;
  const letGo = () => {
    opened?.then((connection) => connection.close()).catch(() => undefined);
    opened = undefined;
  };
  const connection = () => {
    opened ??= openOnce(layout, letGo, tell, watchdogMs).catch((trouble: unknown) => {
      opened = undefined;
      throw trouble;
    });
    return opened;
  };
  return { connection, letGo };
}

async function openOnce(
  layout: Layout,
  letGo: () => void,
  tell: (trouble: StorageTrouble) => void,
  watchdogMs: number,
): Promise<IDBPDatabase> {
  let isBlocked = false;
  const opening = openDB(layout.name, layout.version, {
    upgrade: (fresh) => layout.build(unwrap(fresh) as unknown as IDBDatabase),
    blocked: () => (isBlocked = true),
    blocking: () => {
      letGo();
      tell("reload_needed");
    },
    terminated: letGo,
  });
  return within(watchdogMs, opening, () => {
    opening.then((late) => late.close()).catch(() => undefined);
    return new PhoneTrouble(isBlocked ? "blocked" : "lost");
  });
}

/**
 * Runs `write` in one transaction and resolves after `complete`: with `strict`, after the flush to disk.
 * `write` must return nothing and await nothing: a transaction left waiting commits by itself, half done.
 * It may run twice when the connection was lost, so it must be safe to repeat.
 * @throws PhoneTrouble `full` without room, `reload_needed` or `blocked` where the store does not open, `lost` when the
 *   second try failed too
 */
export function inOneTransaction<Name extends string>(
  where: Database,
  names: readonly Name[],
  write: (stores: Stores<Name>) => undefined,
  durability: "strict" | "relaxed" = "strict",
): Promise<void> {
  return twice(where, (connection) => writeOnce(connection, names, write, durability));
}

/** Reads in one transaction. `read` may await its own requests, nothing else. */
export function inOneReading<Result>(
  where: Database,
  names: readonly string[],
  read: (connection: IDBPDatabase) => Promise<Result>,
): Promise<Result> {
  return twice(where, (connection) => {
    connection.transaction(names, "readonly"); // throws at once when the connection is dead
    return read(connection);
  });
}

async function writeOnce<Name extends string>(
  connection: IDBPDatabase,
  names: readonly Name[],
  write: (stores: Stores<Name>) => undefined,
  durability: "strict" | "relaxed",
): Promise<void> {
  const raw = unwrap(connection) as unknown as IDBDatabase;
  const transaction = raw.transaction([...names], "readwrite", { durability });
  const done = completed(transaction);
  try {
    const stores = Object.fromEntries(names.map((name) => [name, transaction.objectStore(name)])) as Stores<Name>;
    const said = write(stores) as unknown;
    if (said !== undefined) throw new TypeError("write must return nothing, least of all a promise");
  } catch (mistake) {
    done.catch(() => undefined);
    transaction.abort();
    throw mistake;
  }
  await done;
}

function completed(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new DOMException("given up", "AbortError"));
  });
}

async function twice<Result>(where: Database, step: (connection: IDBPDatabase) => Promise<Result>): Promise<Result> {
  try {
    return await stepOnce(where, step);
  } catch (trouble) {
    if (!isLost(trouble)) throw asTrouble(trouble);
    where.letGo();
  }
  return stepOnce(where, step).catch((trouble: unknown) => {
    throw asTrouble(trouble);
  });
}

async function stepOnce<Result>(where: Database, step: (connection: IDBPDatabase) => Promise<Result>): Promise<Result> {
  const connection = await where.connection();
  return within(WATCHDOG_MS, step(connection), () => new PhoneTrouble("lost"));
}

/** A dead connection throws InvalidStateError, a broken store UnknownError; a hanging one meets the watchdog. */
function isLost(trouble: unknown): boolean {
  if (trouble instanceof PhoneTrouble) return trouble.code === "lost";
  return trouble instanceof DOMException && ["InvalidStateError", "UnknownError"].includes(trouble.name);
}

/** Every refusal of the store as one of our words; a mistake in the code stays what it is. */
function asTrouble(trouble: unknown): unknown {
  if (!(trouble instanceof DOMException)) return trouble;
  return new PhoneTrouble(WORDS[trouble.name] ?? "lost", "", trouble.name);
}

function within<Result>(limitMs: number, work: Promise<Result>, late: () => Error): Promise<Result> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(late()), limitMs);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
