/** The store when it misbehaves: held by an old window, let go of by the browser, silent, full; writers that wait. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  type Database,
  WATCHDOG_MS,
  database,
  inOneReading,
  inOneTransaction,
} from "../../../client/src/offline/database.ts";
import type { StorageTrouble } from "../../../client/src/offline/journal.ts";
import { newId } from "../../../client/src/offline/journal.ts";
import { OUTBOX, type Layout } from "../../../client/src/offline/rows.ts";
import { FakePhone, answer } from "./window.ts";

const told: StorageTrouble[] = [];
const tell = (trouble: StorageTrouble) => void told.push(trouble);

beforeEach(() => {
  new FakePhone(); // a fresh, empty disk
  told.length = 0;
});
afterEach(() => vi.restoreAllMocks());

const put = (where: Database, name: string) =>
  inOneTransaction(where, ["meta"], ({ meta }) => {
    meta.put({ name });
  });
const names = (where: Database) => inOneReading(where, ["meta"], (connection) => connection.getAllKeys("meta"));

describe("one transaction", () => {
  it("takes no writer that returns a promise, and keeps nothing of it", async () => {
    const where = database(OUTBOX, tell);
    const waiting = async ({ meta }: { meta: IDBObjectStore }) => void meta.put({ name: "half done" });
    // @ts-expect-error a promise is not nothing: the types refuse it too
    await expect(inOneTransaction(where, ["meta"], waiting)).rejects.toThrow(TypeError);
    expect(await names(where)).toEqual([]);
  });

  it("keeps all or nothing when the writer throws half way", async () => {
    const where = database(OUTBOX, tell);
    const writing = inOneTransaction(where, ["meta"], ({ meta }) => {
      meta.put({ name: "first" });
      throw new Error("half way");
    });
    await expect(writing).rejects.toThrow("half way");
    expect(await names(where)).toEqual([]);
  });

  it("resolves after complete, not after the request's success", async () => {
    const where = database(OUTBOX, tell);
    const order: string[] = [];
    await inOneTransaction(where, ["meta"], ({ meta }) => {
      const request = meta.put({ name: "a" });
      request.onsuccess = () => order.push("success");
      meta.transaction.addEventListener("complete", () => order.push("complete"));
    });
    order.push("resolved");
    expect(order).toEqual(["success", "complete", "resolved"]);
  });
});

describe("a lost connection", () => {
  it("is opened once more, and the write is done", async () => {
    const where = database(OUTBOX, tell);
    (await where.connection()).close(); // as phones do behind the app's back
    await put(where, "after");
    expect(await names(where)).toEqual(["after"]);
  });

  it("that stays lost ends in a clear word", async () => {
    const where = database(OUTBOX, tell);
    const original = IDBDatabase.prototype.transaction;
    let refused = 0;
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...given) {
      if ((given[1] as string) === "versionchange") return original.apply(this, given); // the store's own, at opening
      refused += 1;
      throw new DOMException("the connection is closing", "InvalidStateError");
    });
    await expect(put(where, "a")).rejects.toMatchObject({ code: "lost" });
    expect(refused).toBe(2); // once, and once more after opening again
  });

  it("that says nothing at all is noticed; the watchdog waits 3 s", async () => {
    const Silent = IDBOpenDBRequest as unknown as new () => IDBOpenDBRequest;
    vi.spyOn(indexedDB, "open").mockImplementation(() => new Silent());
    await expect(database(OUTBOX, tell, 50).connection()).rejects.toMatchObject({ code: "lost" });
    expect(WATCHDOG_MS).toBe(3000);
  });
});

describe("an upgrade", () => {
  const next: Layout = { ...OUTBOX, version: 2, build: () => {} };

  it("held up by a window that does not let go ends in `blocked`, not in a blank page", async () => {
    await answer(openFirst());
    await expect(database(next, tell, 50).connection()).rejects.toMatchObject({ code: "blocked" });
  });

  it("makes the older window let go and say so", async () => {
    const old = database(OUTBOX, tell);
    await put(old, "kept");
    expect((await database(next, () => {}).connection()).version).toBe(2);
    expect(told).toEqual(["reload_needed"]);
  });
});

describe("a window left behind by a newer one", () => {
  it("asks to be loaded again, and goes on asking whatever it tries meanwhile", async () => {
    const { phone } = await new FakePhone().signedIn();
    await database({ ...OUTBOX, version: 2, build: () => {} }, () => {}).connection();
    await vi.waitFor(() => expect(phone.status.value.storage).toBe("reload_needed"));
    const keeping = phone.keepDraft({ id: newId(), updatedMs: 1, content: {} });
    await expect(keeping).rejects.toMatchObject({ code: "reload_needed" });
    await phone.syncNow();
    expect(phone.status.value.storage).toBe("reload_needed");
  });

  it("is what an older build is, too, that opens a store a newer one has changed", async () => {
    await database({ ...OUTBOX, version: 2, build: OUTBOX.build }, () => {}).connection();
    await expect(put(database(OUTBOX, tell), "a")).rejects.toMatchObject({ code: "reload_needed" });
  });
});

describe("a full disk", () => {
  it("leaves what was there, is told, and the word goes with the next write that works", async () => {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    await phone.keepDraft({ id, updatedMs: 1, content: "before" });
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (this: IDBObjectStore) {
      // What a browser does when the room runs out: it takes the request and aborts the transaction with this name.
      const transaction = this.transaction as unknown as { _abort(name: string): void };
      queueMicrotask(() => transaction._abort("QuotaExceededError"));
      return new (IDBRequest as unknown as new () => IDBRequest)();
    });
    await expect(phone.keepDraft({ id, updatedMs: 2, content: "after" })).rejects.toMatchObject({ code: "full" });
    await vi.waitFor(() => expect(phone.status.value.storage).toBe("full"));
    expect((await phone.drafts())[0]?.content).toBe("before");
    vi.restoreAllMocks();
    await phone.keepDraft({ id, updatedMs: 3, content: "after" });
    await vi.waitFor(() => expect(phone.status.value.storage).toBeUndefined());
    expect((await phone.drafts())[0]?.content).toBe("after");
  });
});

function openFirst(): IDBOpenDBRequest {
  const opening = indexedDB.open(OUTBOX.name, 1);
  opening.onupgradeneeded = () => OUTBOX.build(opening.result);
  return opening;
}
