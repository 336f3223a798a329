/**
 * Is this phone ready for a day without a network? Gathers what is so, by trying each thing, and judges it.
 * `judge` is pure. Trying leaves nothing behind: its one row is taken away again.
 */
import { open, seal } from "./boxes.ts";
import { type Database, database } from "./database.ts";
import { newId } from "./ids.ts";
import { OUTBOX } from "./rows.ts";
import { type ShellCount, type ShellSeen, browserShell, countKept, startsAlone } from "./shell_kept.ts";
import { readPlace } from "./sign_in.ts";
import { readMeta } from "./sync_store.ts";
import { storageTroubleOf } from "./trouble.ts";
import * as writes from "./writes.ts";

/** Bytes that can still be kept, and thousandths of the whole that are used. */
export interface Room {
  readonly freeBytes: number;
  readonly usedPermille: number;
}

/** `ok`: cuffs are known for the bag this phone measures with; `unchosen`: of several bags none is; `no`: no cuffs are known. */
export type Bag = "ok" | "unchosen" | "no";

/** What was found. Left out: it could not be found out. */
export interface Facts {
  readonly shell?: ShellCount;
  readonly startsAlone: boolean;
  /** A row was written with strict durability and read back the same. */
  readonly store: "kept" | "blocked" | "reload_needed" | "lost" | "full";
  readonly keys: boolean;
  /** When the record was last fetched to its end, ms UTC. */
  readonly pulledMs?: number;
  readonly bag: Bag;
  /** The browser has promised to keep what is stored. */
  readonly promised: boolean;
  readonly room?: Room;
  /** Server minus phone at the last contact, ms. */
  readonly clockOffsetMs?: number;
}

export type Check = "shell" | "start" | "store" | "keys" | "record" | "bag" | "promise" | "room" | "clock";

/** `why` names the sentence: `check-<check>-<why>`. */
export interface Finding {
  readonly check: Check;
  readonly ok: boolean;
  readonly why: string;
}

/** Our own figures: room for a long day's letters, and a clock no report would be doubted for. */
export const LEAST_FREE_BYTES = 5_000_000;
export const MOST_USED_PERMILLE = 800;
export const MOST_CLOCK_OFF_MS = 120_000;

/** One finding per check, always all of them, in the order they are shown. */
export function judge(facts: Facts): Finding[] {
  const { shell, store, room, clockOffsetMs, pulledMs } = facts;
  return [
    finding("shell", shell === undefined ? "none" : shell.missing > 0 ? "missing" : "ok"),
    finding("start", facts.startsAlone ? "ok" : "no"),
    finding("store", store === "kept" ? "ok" : store),
    finding("keys", facts.keys ? "ok" : "no"),
    finding("record", pulledMs === undefined ? "never" : "ok"),
    finding("bag", facts.bag),
    finding("promise", facts.promised ? "ok" : "no"),
    finding("room", room === undefined ? "unknown" : isTight(room) ? "tight" : "ok"),
    finding("clock", clockOffsetMs === undefined ? "unknown" : Math.abs(clockOffsetMs) > MOST_CLOCK_OFF_MS ? "off" : "ok"),
  ];
}

/** What a browser does not tell is said, and stops nobody. */
function finding(check: Check, why: string): Finding {
  return { check, why, ok: why === "ok" || why === "unknown" };
}

function isTight({ freeBytes, usedPermille }: Room): boolean {
  return freeBytes < LEAST_FREE_BYTES || usedPermille > MOST_USED_PERMILLE;
}

/** What is asked of the browser, so that a test can answer in its place. */
export interface SelfTestAround {
  readonly shell: ShellSeen;
  promised(): Promise<boolean>;
  room(): Promise<Room | undefined>;
}

export function browserSelfTest(): SelfTestAround {
  return {
    shell: browserShell(),
    promised: async () => (await navigator.storage?.persisted?.()) ?? false,
    room: readRoom,
  };
}

async function readRoom(): Promise<Room | undefined> {
  const { quota, usage } = (await navigator.storage?.estimate?.()) ?? {};
  if (quota === undefined || usage === undefined || quota === 0) return undefined;
  return { freeBytes: quota - usage, usedPermille: Math.round((usage * 1000) / quota) };
}

/** Tries everything. Never rejects. @param bag what is known of the bag, which is the record's to say */
export async function gather(around: SelfTestAround, bag: Bag): Promise<Facts> {
  const outbox = database(OUTBOX, () => undefined);
  try {
    const [shell, alone, promised, room] = await Promise.all([
      countKept(around.shell).catch(() => undefined),
      startsAlone(around.shell).catch(() => false),
      around.promised().catch(() => false),
      around.room().catch(() => undefined),
    ]);
    return { ...left({ shell, room }), startsAlone: alone, promised, bag, ...(await tryStore(outbox)) };
  } finally {
    outbox.letGo();
  }
}

type Stored = Pick<Facts, "store" | "keys" | "pulledMs" | "clockOffsetMs">;

async function tryStore(outbox: Database): Promise<Stored> {
  try {
    const isSame = await probe(outbox);
    const [pulled, clock] = [await readMeta(outbox, "pulled_ms"), await readMeta(outbox, "clock_offset_ms")];
    const facts = { pulledMs: asNumber(pulled?.value), clockOffsetMs: asNumber(clock?.value) };
    return { store: isSame ? "kept" : "lost", keys: await keysOpen(outbox), ...left(facts) };
  } catch (thrown) {
    return { store: storageTroubleOf(thrown) ?? "lost", keys: await keysOpen(outbox) };
  }
}

/** A row of its own, flushed to disk, read in a later transaction, and taken away. */
async function probe(outbox: Database): Promise<boolean> {
  const value = newId();
  await writes.putMeta(outbox, [{ name: writes.PROBE, value }], "strict");
  const back = await readMeta(outbox, writes.PROBE);
  await writes.removeProbe(outbox);
  return back?.value === value;
}

/** Opens the practice's key and has it seal and open a word. False where nobody has ever signed in. */
async function keysOpen(outbox: Database): Promise<boolean> {
  try {
    const place = await readPlace(outbox);
    if (place === undefined) return false;
    const word = newId();
    return (await open(place.key, "meta", writes.PROBE, await seal(place.key, "meta", writes.PROBE, word))) === word;
  } catch {
    return false;
  }
}

/** Asks the browser to keep this store, and notes its answer where the outbox shows it. Call it at a tap. */
export async function askToKeep(): Promise<boolean> {
  const promised = (await navigator.storage?.persist?.().catch(() => false)) ?? false;
  const outbox = database(OUTBOX, () => undefined);
  await writes.putMeta(outbox, [{ name: "persisted", value: promised }]).catch(() => undefined);
  outbox.letGo();
  return promised;
}

function asNumber(value: unknown): number | undefined {
  return typeof value === "number" ? value : undefined;
}

/** Without the names whose value is not known. */
function left<Values extends object>(values: Values): { [Name in keyof Values]?: Exclude<Values[Name], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as never;
}
