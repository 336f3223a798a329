/**
 * Waiting times, sizes of batches, and bad entries among good ones.
 * Back-off with full jitter is common practice; its bounds here are the project's own: 1 s × 2^n, at most 5 min.
 */
import { describe, expect, it } from "vitest";
import { database } from "../../../client/src/offline/database.ts";
import * as pacing from "../../../client/src/offline/pace.ts";
import type { Reply } from "../../../client/src/offline/replies.ts";
import { OUTBOX } from "../../../client/src/offline/rows.ts";
import { putTries } from "../../../client/src/offline/writes.ts";
import { type Fault, problem } from "./fake_server.ts";
import type { Phone } from "../../../client/src/offline/journal.ts";
import { CAT, FakePhone, type Opened, quiet, until } from "./window.ts";

/** A phone with `count` entries that could not be sent yet, and a server that answers from now on as `fault` says. */
async function filedOffline(count: number, fault: Fault): Promise<{ shared: FakePhone } & Opened> {
  const shared = new FakePhone();
  const { phone, trigger } = await shared.signedIn();
  shared.server.fault = () => ({ failed: "no_network" });
  for (let at = 1; at <= count; at += 1) await phone.file({ kind: "patient", body: { ...CAT, name: `cat ${at}` } });
  await quiet(phone);
  shared.server.requests = [];
  shared.server.fault = fault;
  return { shared, phone, trigger };
}

const idsOf = async (phone: Phone, ...numbers: number[]) =>
  new Set((await phone.outbox()).filter(({ number }) => numbers.includes(number)).map(({ id }) => id));

/** Answers hand-ins by `reply` when they are of the kind described, and lets all else through. */
const badPush =
  (reply: Reply, isMeant: (ids: string[]) => boolean = () => true): Fault =>
  ({ route, ids }) =>
    route === "push" && isMeant(ids) ? reply : undefined;

const hasOne = (bad: ReadonlySet<string>) => (ids: string[]) => ids.some((id) => bad.has(id));

describe("waiting", () => {
  it("doubles from 1 s to 5 min, with full jitter", () => {
    const pace = pacing.freshPace();
    const longest = Array.from({ length: 11 }, () => {
      pacing.waitAfterFailure(pace, 0, () => 0.999_999_9);
      return pacing.nextTryMs(pace);
    });
    expect(longest).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 300, 300].map((seconds) => seconds * 1000));
    pacing.waitAfterFailure(pace, 0, () => 0);
    expect(pacing.nextTryMs(pace)).toBe(0);
    pacing.waitAfterFailure(pace, 0, () => 0.5);
    expect(pacing.nextTryMs(pace)).toBe(150_000);
  });

  it("never outlasts an hour, whatever was asked, nor a clock that was set back", () => {
    const pace = pacing.freshPace();
    const hourMs = 3_600_000;
    pacing.waitAfterFailure(pace, 0, () => 0, 365 * 24 * hourMs);
    expect([pacing.mustWait(pace, hourMs - 1), pacing.mustWait(pace, hourMs)]).toEqual([true, false]);
    pacing.allWell(pace);
    const nowMs = 1_700_000_000_000;
    pacing.waitAfterFailure(pace, nowMs, () => 1);
    pacing.rest(pace, 7, nowMs, pacing.TRIES_UNTIL_ASIDE);
    expect(pacing.mustWait(pace, nowMs)).toBe(true);
    expect(pacing.restingAt(pace, nowMs)).toEqual(new Set([7]));
    const aYearBackMs = nowMs - 365 * 24 * hourMs;
    expect(pacing.mustWait(pace, aYearBackMs)).toBe(false);
    expect(pacing.restingAt(pace, aYearBackMs)).toEqual(new Set());
  });

  it("ends by itself: the timer tries again, and everything arrives with no tap", async () => {
    const { shared, phone } = await filedOffline(3, () => ({ failed: "no_network" }));
    shared.pass(60_000);
    await quiet(phone);
    expect(phone.status.value.unsent).toBe(3);
    shared.server.fault = () => undefined;
    for (let at = 0; at < 10 && phone.status.value.unsent > 0; at += 1) {
      shared.pass(30_000);
      await quiet(phone);
    }
    expect(phone.status.value).toMatchObject({ unsent: 0, network: undefined });
  });

  it("is not cut short by a filing or a timer, but by a look at the screen", async () => {
    const { shared, phone, trigger } = await filedOffline(1, () => undefined);
    trigger("timer");
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect(shared.server.requests).toEqual([]);
    trigger("seen");
    await until(() => phone.status.value.unsent === 0, "both in the record");
  });

  it("as long as the server asked, a look at the screen changes nothing; a press does", async () => {
    const { shared, phone, trigger } = await filedOffline(1, badPush(problem(429, "slow_down", 60_000)));
    await phone.syncNow();
    expect(phone.status.value).toMatchObject({ network: "busy", nextTryMs: shared.nowMs + 60_000 });
    shared.server.fault = () => undefined;
    shared.pass(30_000);
    trigger("seen");
    await quiet(phone);
    expect(phone.status.value.unsent).toBe(1);
    await phone.syncNow();
    expect(phone.status.value.unsent).toBe(0);
  });
});

describe("batches", () => {
  it("hold at most 100 entries, in the order of filing", async () => {
    const { shared, phone } = await filedOffline(230, () => undefined);
    phone.close();
    const { phone: again } = await shared.window(); // a fresh pace: starts at 100
    await until(() => again.status.value.unsent === 0, "all in the record");
    expect(shared.server.pushes().map(({ count }) => count)).toEqual([100, 100, 30]);
    const names = shared.server.names();
    expect(names).toEqual(Array.from({ length: 230 }, (_, at) => `cat ${at + 1}`));
  });

  it("keep the order of filing over tries without network", async () => {
    const { shared, phone } = await filedOffline(5, () => undefined);
    await phone.syncNow();
    const names = shared.server.names();
    expect(names).toEqual(["cat 1", "cat 2", "cat 3", "cat 4", "cat 5"]);
  });

  it("hold at most 512 KiB, header and envelopes counted", async () => {
    const sizes: number[] = [];
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    const push = shared.server.push.bind(shared.server);
    shared.server.push = (practice, bundle) => {
      sizes.push(bundle.length);
      return push(practice, bundle);
    };
    shared.server.fault = () => ({ failed: "no_network" });
    const assessment = { note: "x".repeat(30_000) };
    for (let at = 0; at < 40; at += 1) await phone.file({ kind: "patient", body: CAT, assessment });
    shared.server.fault = () => undefined;
    await phone.syncNow();
    await phone.syncNow();
    expect(shared.server.journal).toHaveLength(40);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(512 * 1024);
    expect(Math.max(...sizes)).toBeGreaterThan(400 * 1024); // and no smaller than need be
  });

  it("are halved until they get through, and doubled after", async () => {
    const { shared, phone } = await filedOffline(100, badPush(problem(413, "too_large"), (ids) => ids.length > 20));
    const { phone: again } = await shared.window(); // a fresh pace: starts at 100
    await until(() => again.status.value.unsent === 0, "all in the record");
    const counts = shared.server.pushes().map(({ count }) => count);
    expect(counts.slice(0, 4)).toEqual([100, 50, 25, 12]);
    expect(counts[4]).toBe(24);
    expect(counts.slice(5, 7)).toEqual([12, 24]);
    await until(() => phone.status.value.unsent === 0, "the other window's count");
  });

  it("are halved from try to try when no answer comes at all", async () => {
    const { shared, phone } = await filedOffline(40, badPush({ failed: "timed_out" }));
    phone.close();
    const { phone: again } = await shared.window();
    await quiet(again);
    for (let at = 0; at < 7; at += 1) await again.syncNow();
    expect(shared.server.pushes().map(({ count }) => count)).toEqual([40, 20, 10, 5, 2, 1, 1, 1]);
    expect((await again.outbox()).every(({ tries, state }) => tries === 0 && state === "waiting")).toBe(true);
  });
});

describe("bad entries", () => {
  it("never block the others, wherever they stand", async () => {
    const { shared, phone, trigger } = await filedOffline(30, () => undefined);
    const bad = await idsOf(phone, 1, 7, 8, 30);
    shared.server.fault = badPush(problem(500, "server_error"), hasOne(bad));
    for (let at = 0; at < 12; at += 1) {
      shared.pass(30_000);
      trigger("timer");
      await quiet(phone);
    }
    const outbox = await phone.outbox();
    expect(outbox.filter(({ state }) => state === "stored")).toHaveLength(26);
    expect(new Set(outbox.filter(({ state }) => state === "waiting").map(({ id }) => id))).toEqual(bad);
  });

  it("are set aside after five failures of their own, told, tried hourly, delivered once that works", async () => {
    const { shared, phone } = await filedOffline(2, () => undefined);
    const bad = await idsOf(phone, 1);
    const fault: Fault = badPush(problem(500, "server_error"), hasOne(bad));
    shared.server.fault = fault;
    for (let at = 0; at < 5; at += 1) await phone.syncNow();
    await quiet(phone);
    const [good, aside] = await phone.outbox();
    expect(good).toMatchObject({ state: "stored", tries: 0 });
    expect(aside).toMatchObject({ state: "waiting", tries: 5, code: "set_aside" });
    expect(phone.status.value).toMatchObject({ unsent: 1, needsYou: 1 });
    shared.server.requests = [];
    shared.pass(59 * 60_000);
    await quiet(phone);
    expect(shared.server.pushes()).toEqual([]);
    shared.server.fault = () => undefined;
    shared.pass(61_000);
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect(phone.status.value).toMatchObject({ unsent: 0, needsYou: 0 });
  });

  it("count a failure once, though it was written twice over a lost connection", async () => {
    const { phone } = await filedOffline(1, () => undefined);
    const outbox = database(OUTBOX, () => {});
    for (let at = 0; at < 2; at += 1) await putTries(outbox, 1, 1, undefined);
    expect(await phone.outbox()).toMatchObject([{ state: "waiting", tries: 1 }]);
  });

  it("are not made of good ones by a server that fails for all", async () => {
    const { shared, phone } = await filedOffline(10, badPush(problem(500, "server_error")));
    for (let at = 0; at < 12; at += 1) await phone.syncNow();
    expect((await phone.outbox()).map(({ tries }) => tries)).toEqual(Array.from({ length: 10 }, () => 0));
    expect(phone.status.value).toMatchObject({ unsent: 10, needsYou: 0, network: "server_trouble" });
    shared.server.fault = () => undefined;
    await phone.syncNow();
    expect(phone.status.value.unsent).toBe(0);
  });

  it("whose box no longer opens are told and do not stop the others", async () => {
    const { shared, phone } = await filedOffline(3, () => undefined);
    const database = await new Promise<IDBDatabase>((resolve) => {
      const opening = indexedDB.open("quietcuff-outbox");
      opening.onsuccess = () => resolve(opening.result);
    });
    const entries = database.transaction("entries", "readwrite").objectStore("entries");
    const found = entries.get(1) as IDBRequest<{ box: { iv: Uint8Array } }>;
    found.onsuccess = () => entries.put({ ...found.result, box: { ...found.result.box, iv: new Uint8Array(12) } });
    await new Promise((resolve) => (entries.transaction.oncomplete = resolve));
    database.close();
    await phone.syncNow();
    await quiet(phone);
    const stood = (await phone.outbox()).map(({ state, code }) => [state, code]);
    expect(stood).toEqual([["stored", undefined], ["stored", undefined], ["waiting", "unreadable"]]);
    expect(phone.status.value).toMatchObject({ unsent: 1, needsYou: 1 });
    expect(shared.server.journal).toHaveLength(2);
  });
});
