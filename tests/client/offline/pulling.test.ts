/** A pulled page is kept whole, and only when it fits; a restored server gets back what it lost. */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { NO_CHAIN, beginning, follow } from "../../../client/src/offline/chain.ts";
import { EPOCH, NEXT_EPOCH, problem } from "./fake_server.ts";
import type { Phone } from "../../../client/src/offline/journal.ts";
import { CAT, FakePhone, everything, quiet, strangeLetter } from "./window.ts";

async function kept(): Promise<{ positions: number[]; cursor: { position: number; epoch: string } | undefined }> {
  const stores = await everything();
  const rows = (name: string) => stores.find(({ store }) => store === name)?.rows ?? [];
  const positions = (rows("letters") as { position: number }[]).map(({ position }) => position);
  return { positions, cursor: rows("cursor")[0] as { position: number; epoch: string } | undefined };
}

/** Letters of another phone, numbered from `first`. */
function addCats({ server }: FakePhone, count: number, first: number): void {
  for (let at = 0; at < count; at += 1) {
    server.add(strangeLetter("patient", { ...CAT, name: `cat ${at}` }), first + at);
  }
}

async function phoneAndServer(letters: number): Promise<{ shared: FakePhone; phone: Phone }> {
  const shared = new FakePhone();
  addCats(shared, letters, 1);
  shared.server.pageSize = 3;
  const { phone } = await shared.signedIn();
  return { shared, phone };
}

describe("pages", () => {
  it("are fetched to the end, and the cursor names the last one", async () => {
    const { shared, phone } = await phoneAndServer(8);
    expect(await kept()).toMatchObject({ positions: [1, 2, 3, 4, 5, 6, 7, 8], cursor: { position: 8, epoch: EPOCH } });
    expect(await phone.patients()).toHaveLength(8);
    expect(phone.status.value.lastPulledMs).toBe(shared.nowMs);
    shared.server.add(strangeLetter("patient", { ...CAT, name: "late" }), 99);
    await phone.syncNow();
    expect((await kept()).cursor?.position).toBe(9);
  });

  /** Ways to bend the page after position 3: lines 1, 3, 5 are envelopes, 2, 4, 6 letters. */
  const BENDS: [string, (lines: string[]) => string[]][] = [
    ["an entry left out of the middle", (lines) => withCount(lines.filter((_, at) => at !== 3 && at !== 4), 2)],
    ["two entries swapped", (lines) => [0, 3, 4, 1, 2, 5, 6].map((at) => lines[at] as string)],
    ["a letter changed by one sign", (lines) => lines.with(4, (lines[4] as string).replace("cat", "cot"))],
    ["a letter of another fingerprint", (lines) => change(lines, 3, { sha: "0".repeat(64) })],
    ["a chain that is not that of all before", (lines) => change(lines, 3, { chain: "0".repeat(64) })],
    ["a wrong word on what came before", (lines) => change(lines, 1, { after: 2 })],
    ["an envelope without a chain", (lines) => change(lines, 1, { chain: undefined })],
    ["a count that is wrong", (lines) => withCount(lines, 2)],
    ["a page cut off", (lines) => lines.slice(0, 6)],
    ["another practice's page", (lines) => change(lines, 0, { practice: "77777777-7777-4777-8777-777777777777" })],
    ["more to come, and nothing here", (lines) => change(lines.slice(0, 1), 0, { count: 0, more: true })],
  ];

  it.each(BENDS)("that do not fit are not kept, and the cursor stays: %s", async (_name, bend) => {
    const { shared, phone } = await phoneAndServer(3);
    addCats(shared, 3, 10);
    shared.server.bend = bend;
    await phone.syncNow();
    expect(await kept()).toMatchObject({ positions: [1, 2, 3], cursor: { position: 3 } });
    expect(["record_differs", "not_understood"]).toContain(phone.status.value.network);
    await phone.file({ kind: "patient", body: CAT }); // and handing in goes on
    await quiet(phone);
    shared.server.bend = (lines) => lines;
    await phone.syncNow();
    expect((await kept()).cursor?.position).toBe(7);
    expect(phone.status.value).toMatchObject({ unsent: 0, network: undefined });
  });

  it("come again after a failure in the middle, from where the phone stands", async () => {
    const { shared, phone } = await phoneAndServer(0);
    addCats(shared, 8, 1);
    shared.server.fault = ({ route, count }) =>
      route === "pull" && count === 3 ? { failed: "no_network" } : undefined;
    await phone.syncNow();
    expect(await kept()).toMatchObject({ positions: [1, 2, 3], cursor: { position: 3 } });
    shared.server.fault = () => undefined;
    shared.server.requests = [];
    await phone.syncNow();
    expect(shared.server.requests.filter(({ route }) => route === "pull").map(({ count }) => count)).toEqual([3, 6]);
    expect((await kept()).positions).toHaveLength(8);
  });

  it("do not prove an own entry whose id stands in the record with other bytes", async () => {
    const { shared, phone } = await phoneAndServer(0);
    shared.server.fault = ({ route }) => (route === "push" ? { failed: "no_network" } : undefined);
    const { letter } = await phone.file({ kind: "patient", body: CAT });
    shared.server.add(JSON.stringify({ ...letter, reason: "not what was filed here" }), 9);
    await phone.syncNow();
    expect((await kept()).positions).toEqual([1]);
    expect(await phone.outbox()).toMatchObject([{ state: "waiting" }]);
  });

  it("keep a letter of a kind this build does not know", async () => {
    const { shared, phone } = await phoneAndServer(0);
    shared.server.add(strangeLetter("patient", {}, { kind: "plan", schema: 7 }), 1);
    await phone.syncNow();
    expect((await kept()).cursor?.position).toBe(1);
    expect(phone.status.value.network).toBeUndefined();
    expect([await phone.patients(), await phone.bags()]).toEqual([[], []]); // kept, and shown as nothing else
  });

  it("say how far the phone's clock is from the server's, and letters carry it", async () => {
    const { shared, phone } = await phoneAndServer(0);
    shared.server.serverTimeMs = shared.nowMs + 90_000;
    await phone.syncNow();
    await quiet(phone);
    expect((await phone.file({ kind: "patient", body: CAT })).letter.clock_offset_ms).toBe(90_000);
  });
});

describe("the chain", () => {
  it("is SHA-256 over the chain before and the fingerprint, from 32 zero bytes (here by Node's crypto)", async () => {
    const letters = ["one", "two"].map((word) => new TextEncoder().encode(word));
    const shas = letters.map((letter) => createHash("sha256").update(letter).digest());
    const one = createHash("sha256").update(Buffer.alloc(32)).update(shas[0] as Buffer).digest();
    const two = createHash("sha256").update(one).update(shas[1] as Buffer).digest();
    const entries = letters.map((letter, at) => ({
      envelope: {
        ...{ device: "d", number: 1, position: at + 1, after: at },
        ...{ sha: (shas[at] as Buffer).toString("hex"), chain: ([one, two][at] as Buffer).toString("hex") },
      },
      letter,
    }));
    const digest = async (bytes: Uint8Array) => new Uint8Array(createHash("sha256").update(bytes).digest());
    const end = { epoch: "e", position: 2, chain: two.toString("hex") };
    expect(await follow(beginning("e"), entries, digest)).toEqual(end);
    expect(await follow({ epoch: "e", position: 0, chain: "1".repeat(64) }, entries, digest)).toBeUndefined();
    expect(NO_CHAIN).toBe(Buffer.alloc(32).toString("hex"));
  });
});

describe("a server restored from an older copy", () => {
  it("gets back every own entry it lost, and the phone reads its record from the beginning", async () => {
    const { shared, phone } = await phoneAndServer(2);
    for (const name of ["a", "b", "c"]) await phone.file({ kind: "patient", body: { ...CAT, name } });
    await quiet(phone);
    shared.server.restore(3); // strange, strange, a
    shared.server.add(strangeLetter("patient", { ...CAT, name: "another phone was faster" }), 7); // takes position 4
    await phone.syncNow();
    await quiet(phone);
    const names = shared.server.names();
    expect(names).toEqual(["cat 0", "cat 1", "a", "another phone was faster", "b", "c"]);
    const stood = (await phone.outbox()).map(({ state, position }) => [state, position]);
    expect(stood).toEqual([["stored", 6], ["stored", 5], ["stored", 3]]);
    expect((await kept()).cursor).toMatchObject({ epoch: NEXT_EPOCH, position: 6 });
    expect(phone.status.value).toMatchObject({ unsent: 0, network: undefined });
  });

  it("makes the phone drop nothing: others' letters that the server lost stay readable", async () => {
    const { shared, phone } = await phoneAndServer(4);
    shared.server.restore(2);
    shared.server.add(strangeLetter("patient", { ...CAT, name: "new third" }), 7);
    await phone.syncNow();
    await quiet(phone);
    const cards = (await phone.patients()).map(({ letter, inRecord }) => [letter.body["name"], inRecord]);
    expect(cards).toEqual([["cat 0", true], ["cat 1", true], ["cat 2", false], ["cat 3", false], ["new third", true]]);
  });

  it("is noticed at a hand-in too, by a phone nobody is signed in on", async () => {
    const { shared, phone } = await phoneAndServer(0);
    await phone.file({ kind: "patient", body: { ...CAT, name: "a" } });
    await quiet(phone);
    shared.server.fault = () => ({ failed: "no_network" });
    await phone.file({ kind: "patient", body: { ...CAT, name: "b" } });
    await phone.signOut();
    await quiet(phone);
    phone.close();
    shared.server.restore(0);
    shared.server.fault = () => undefined;
    shared.server.requests = [];
    const { phone: again } = await shared.window();
    await quiet(again);
    expect(shared.server.requests.map(({ route }) => route)).not.toContain("pull");
    const names = shared.server.names();
    expect(names).toEqual(["b", "a"]);
    expect(again.status.value.unsent).toBe(0);
  });

  it("with the same epoch but a shorter record is healed the same way", async () => {
    const { shared, phone } = await phoneAndServer(0);
    await phone.file({ kind: "patient", body: { ...CAT, name: "a" } });
    await phone.file({ kind: "patient", body: { ...CAT, name: "b" } });
    await quiet(phone);
    shared.server.restore(1, EPOCH);
    await phone.syncNow();
    await quiet(phone);
    expect(shared.server.journal).toHaveLength(2);
    expect((await kept()).cursor).toMatchObject({ epoch: EPOCH, position: 2 });
  });

  it("is noticed by the page alone, where the server takes the old place without a word", async () => {
    const { shared, phone } = await phoneAndServer(2);
    const pull = shared.server.pull.bind(shared.server);
    shared.server.pull = (practice, _epoch, position) => pull(practice, shared.server.epoch, position);
    shared.server.restore(2);
    await phone.syncNow();
    await quiet(phone);
    expect((await kept()).cursor).toMatchObject({ epoch: NEXT_EPOCH, position: 2 });
  });

  it("is offered what it held, and tells anew what it makes of each entry", async () => {
    const { shared, phone } = await phoneAndServer(1);
    shared.server.judge = ({ body }) => {
      const { name } = body as { name: string };
      return name === "held" ? { answer: "held", code: "later" } : { answer: "stored", assessment: { note: "old" } };
    };
    for (const name of ["held", "differs"]) await phone.file({ kind: "patient", body: { ...CAT, name } });
    await quiet(phone);
    expect((await phone.outbox()).map(({ state }) => state)).toEqual(["stored", "held"]);
    shared.server.judge = () => ({ answer: "stored" });
    shared.server.restore(0);
    await phone.syncNow();
    await quiet(phone);
    const stood = (await phone.outbox()).map(({ state, serverAssessment }) => [state, serverAssessment]);
    expect(stood).toEqual([["stored", undefined], ["stored", undefined]]);
  });

  it("that refuses the place again and again ends in trouble told, not in a loop", async () => {
    const { shared, phone } = await phoneAndServer(1);
    shared.server.fault = ({ route }) => (route === "pull" ? problem(409, "cursor_void") : undefined);
    shared.server.requests = [];
    await phone.syncNow();
    expect(phone.status.value.network).toBe("record_differs");
    expect(shared.server.requests.length).toBeLessThan(5);
  });
});

function change(lines: string[], at: number, by: object): string[] {
  return lines.map((line, here) => (here === at ? JSON.stringify({ ...(JSON.parse(line) as object), ...by }) : line));
}

function withCount(lines: string[], count: number): string[] {
  return change(lines, 0, { count });
}
