/*
 * The self-test of a phone that is to work without a network: each thing missing is seen, alone, and nothing is left behind.
 * Sources: Storage Standard (persisted, estimate), Service Workers (Cache); limits of room and clock are figures of our own.
 */
import { describe, expect, it } from "vitest";
import { type Facts, type SelfTestAround, gather, judge } from "../../../client/src/offline/self_test.ts";
import { countKept, startsAlone } from "../../../client/src/offline/shell_kept.ts";
import { FakePhone, everything } from "./window.ts";

const WELL: Facts = {
  shell: { files: 20, missing: 0 },
  ...{ startsAlone: true, store: "kept", keys: true, pulledMs: 1, bag: "ok", promised: true },
  room: { freeBytes: 5_000_000, usedPermille: 800 },
  clockOffsetMs: -120_000,
};

/** The checks that fail, by their sentences. */
function missing(facts: Facts): string[] {
  return judge(facts).filter(({ ok }) => !ok).map(({ check, why }) => `${check}-${why}`);
}

function without(name: keyof Facts): Facts {
  const { [name]: _left, ...rest } = WELL;
  return rest as Facts;
}

describe("judging", () => {
  it("finds nothing missing at the limits themselves", () => expect(missing(WELL)).toEqual([]));

  it.each<[string, Facts]>([
    ["shell-missing", { ...WELL, shell: { files: 20, missing: 1 } }],
    ["shell-none", without("shell")],
    ["start-no", { ...WELL, startsAlone: false }],
    ["store-full", { ...WELL, store: "full" }],
    ["store-lost", { ...WELL, store: "lost" }],
    ["keys-no", { ...WELL, keys: false }],
    ["record-never", without("pulledMs")],
    ["bag-no", { ...WELL, bag: "no" }],
    ["bag-unchosen", { ...WELL, bag: "unchosen" }],
    ["promise-no", { ...WELL, promised: false }],
    ["room-tight", { ...WELL, room: { freeBytes: 4_999_999, usedPermille: 10 } }],
    ["room-tight", { ...WELL, room: { freeBytes: 9_000_000_000, usedPermille: 801 } }],
    ["clock-off", { ...WELL, clockOffsetMs: 120_001 }],
    ["clock-off", { ...WELL, clockOffsetMs: -120_001 }],
  ])("%s alone", (name, facts) => expect(missing(facts)).toEqual([name]));

  it("says of room and clock that they are not known, and lets the day begin", () => {
    const found = judge({ ...without("room"), clockOffsetMs: undefined as never });
    expect(found.filter(({ why }) => why === "unknown").map(({ check, ok }) => [check, ok])).toEqual([["room", true], ["clock", true]]);
  });
});

/** A cache as a worker fills it: the page with its revision, and what the page names. */
function cache(): Map<string, Response> {
  const page = '<link href="/assets/a-12345678.css"><script src="/assets/b-12345678.js"></script>';
  return new Map([
    ["https://x.test/index.html?__WB_REVISION__=1", new Response(page)],
    ["https://x.test/assets/a-12345678.css", new Response("a")],
    ["https://x.test/assets/b-12345678.js", new Response("b")],
    ["https://x.test/assets/later-12345678.js", new Response("c")],
  ]);
}

function seen(kept: Map<string, Response>, listed: readonly string[] | undefined = [...cache().keys()]) {
  return { listed: async () => listed, kept: async (address: string) => kept.get(address)?.clone() };
}

describe("the app's files", () => {
  it("are all there, and the app starts from them", async () => {
    expect(await countKept(seen(cache()))).toEqual({ files: 4, missing: 0 });
    expect(await startsAlone(seen(cache()))).toBe(true);
  });
  it.each([...cache().keys()])("%s is missed when it is gone", async (address) => {
    const kept = cache();
    kept.delete(address);
    expect(await countKept(seen(kept))).toEqual({ files: 4, missing: 1 });
    expect(await startsAlone(seen(kept))).toBe(address.includes("later")); // that one is not needed for the first paint
  });
  it("are not there when an error was kept in place of one", async () => {
    const kept = cache().set("https://x.test/assets/b-12345678.js", new Response("", { status: 404 }));
    expect([await countKept(seen(kept)), await startsAlone(seen(kept))]).toEqual([{ files: 4, missing: 1 }, false]);
  });
  it("are not known to be there when no worker answers or its list is empty", async () => {
    const silent = { listed: async () => undefined, kept: async () => new Response("") };
    expect([await countKept(silent), await startsAlone(silent)]).toEqual([undefined, false]);
    expect([await countKept(seen(cache(), [])), await startsAlone(seen(cache(), []))]).toEqual([undefined, false]);
  });
});

const AROUND: SelfTestAround = {
  shell: seen(cache()),
  promised: async () => true,
  room: async () => ({ freeBytes: 1e9, usedPermille: 1 }),
};

describe("trying the store", () => {
  it("writes, reads back, opens the keys and leaves nothing behind", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    await phone.syncNow();
    const before = JSON.stringify(await everything());
    const facts = await gather(AROUND, "ok");
    expect(missing(facts).filter((name) => name !== "clock-off")).toEqual([]); // the fake server's clock stands elsewhere
    expect(facts.pulledMs).toBe(shared.nowMs);
    expect(JSON.stringify(await everything())).toBe(before);
  });
  it("sees that nobody has signed in: no keys, no record", async () => {
    await new FakePhone().window();
    expect(missing(await gather(AROUND, "ok"))).toEqual(["keys-no", "record-never"]);
  });
  it("sees a store that takes nothing", async () => {
    await new FakePhone().signedIn();
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
    const facts = await gather(AROUND, "ok").finally(() => (IDBObjectStore.prototype.put = put));
    expect(facts.store).toBe("full");
  });
  it("takes a browser that throws for one that does not answer", async () => {
    await new FakePhone().signedIn();
    const no = () => Promise.reject(new TypeError("not here"));
    const facts = await gather({ shell: { listed: no, kept: no }, promised: no, room: no }, "ok");
    expect(missing(facts)).toEqual(expect.arrayContaining(["shell-none", "start-no", "promise-no"]));
  });
});
