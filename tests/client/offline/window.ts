/**
 * One window of the app in Node: the real journal over fake-indexeddb and Node's WebCrypto, a clock and timers that
 * only move when a test moves them, and a channel and a lock that windows of the same phone share.
 */
import "fake-indexeddb/auto";
import type { Around, Channel, Word } from "../../../client/src/offline/around.ts";
import { type Phone, newId, openPhone } from "../../../client/src/offline/journal.ts";
import type { Reason } from "../../../client/src/offline/triggers.ts";
import { FakeServer } from "./fake_server.ts";

/** Runs of any window that have not ended. */
let underWay = 0;

/** What the windows of one phone share. */
export class FakePhone {
  nowMs = 1_700_000_000_000;
  random = () => 1;
  isLocked = false;
  lockRefusals = 0;
  persistAnswer = true;
  persistAsked = 0;
  readonly server = new FakeServer();
  readonly #listeners = new Map<number, (word: Word) => void>();
  readonly #timers = new Set<{ atMs: number; call: () => void }>();
  #windows = 0;

  constructor() {
    globalThis.indexedDB = new (IDBFactory as unknown as new () => IDBFactory)();
  }

  async window(): Promise<{ phone: Phone; trigger: (reason: Reason) => void }> {
    let trigger: (reason: Reason) => void = () => {};
    const around: Around = {
      clock: () => this.nowMs,
      random: () => this.random(),
      network: this.server,
      channel: this.#channel(),
      alone: (work) => this.#alone(work),
      later: (delayMs, call) => this.#later(delayMs, call),
      watch: (onReason) => {
        trigger = onReason;
        return () => {};
      },
      persist: async () => {
        this.persistAsked += 1;
        return this.persistAnswer;
      },
    };
    const phone = await openPhone(around);
    return { phone, trigger: (reason) => trigger(reason) };
  }

  /** A window with somebody signed in, and everything quiet. */
  async signedIn(): Promise<{ phone: Phone; trigger: (reason: Reason) => void }> {
    const opened = await this.window();
    await opened.phone.signIn("ada", "right");
    await quiet(opened.phone);
    return opened;
  }

  /** Moves the clock and calls every timer that came due. */
  pass(ms: number): void {
    this.nowMs += ms;
    for (const timer of [...this.#timers].filter(({ atMs }) => atMs <= this.nowMs)) {
      this.#timers.delete(timer);
      timer.call();
    }
  }

  #later(delayMs: number, call: () => void): () => void {
    const timer = { atMs: this.nowMs + delayMs, call };
    this.#timers.add(timer);
    return () => this.#timers.delete(timer);
  }

  #channel(): Channel {
    this.#windows += 1;
    const mine = this.#windows;
    return {
      tell: (word) => {
        for (const [window, listen] of this.#listeners) if (window !== mine) setTimeout(() => listen(word), 0);
      },
      hear: (listen) => this.#listeners.set(mine, listen),
      close: () => this.#listeners.delete(mine),
    };
  }

  async #alone(work: () => Promise<void>): Promise<boolean> {
    if (this.isLocked) {
      this.lockRefusals += 1;
      return false;
    }
    this.isLocked = true;
    underWay += 1;
    await work().finally(() => {
      this.isLocked = false;
      underWay -= 1;
    });
    return true;
  }
}

/** Waits until `isSo`, or fails after 4 s of real time. */
export async function until(isSo: () => boolean, what: string): Promise<void> {
  const endMs = Date.now() + 4000;
  while (!isSo()) {
    if (Date.now() > endMs) throw new Error(`never came: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 2));
  }
}

/** Waits until no run is under way and the status has settled. */
export async function quiet(phone: Phone): Promise<void> {
  for (let calm = 0, last = -1; calm < 4; ) {
    await new Promise((resolve) => setTimeout(resolve, 3));
    const isCalm = underWay === 0 && phone.changed.value === last;
    last = phone.changed.value;
    calm = isCalm ? calm + 1 : 0;
  }
}

export { newId } from "../../../client/src/offline/ids.ts";

export type Opened = Awaited<ReturnType<FakePhone["window"]>>;

export const CAT = { species: "cat", name: "Bella" } as const;

/** A measurement that both wire checks accept; invented. */
export function measurement(patient: string, startedMs = 1_700_000_000_000): object {
  const readings = [{ id: "a", systolic_mmhg: 150 }];
  return { patient, started_at_ms: startedMs, species: "cat", sets: [{ method: "doppler", readings }] };
}

/** A letter of another phone, as text. */
export function strangeLetter(kind: "patient" | "measurement", body: object, more: object = {}): string {
  return JSON.stringify({
    ...{ id: newId(), kind, schema: 1, author: "77777777-7777-4777-8777-777777777777", basis: 0 },
    ...{ made_at_ms: 1_700_000_000_000, zone: "Etc/UTC", offset_min: 0, ...more, body },
  });
}

/** Every row of every store of every database on this phone. */
export async function everything(): Promise<{ database: string; store: string; rows: unknown[] }[]> {
  const found: { database: string; store: string; rows: unknown[] }[] = [];
  for (const { name } of await indexedDB.databases()) {
    const database = await answer(indexedDB.open(name as string));
    for (const store of database.objectStoreNames) {
      const rows = await answer(database.transaction(store).objectStore(store).getAll());
      found.push({ database: name as string, store, rows });
    }
    database.close();
  }
  return found;
}

export function answer<Result>(request: IDBRequest<Result>): Promise<Result> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
