/** Only the server's own parsed answer to an entry is delivery; all else leaves the entry waiting on the phone. */
import { describe, expect, it } from "vitest";
import { database } from "../../../client/src/offline/database.ts";
import type { Reply } from "../../../client/src/offline/replies.ts";
import { OUTBOX } from "../../../client/src/offline/rows.ts";
import { putAnswers } from "../../../client/src/offline/writes.ts";
import { type Fault, OTHER_PERSON, captivePortal, json, ndjson, problem, text } from "./fake_server.ts";
import type { Phone } from "../../../client/src/offline/journal.ts";
import { CAT, FakePhone, quiet } from "./window.ts";

/** A phone with one filed entry that met `fault` on its way. */
async function filedInto(fault: Fault): Promise<{ shared: FakePhone; phone: Phone }> {
  const shared = new FakePhone();
  const { phone } = await shared.signedIn();
  shared.server.fault = fault;
  await phone.file({ kind: "patient", body: CAT });
  await quiet(phone);
  return { shared, phone };
}

const onPush = (reply: Reply | "lose_answer"): Fault => ({ route }) => (route === "push" ? reply : undefined);

describe("an answer to an entry", () => {
  it("stored: in the record, with its position and when it was sent", async () => {
    const { shared, phone } = await filedInto(() => undefined);
    expect(await phone.outbox()).toMatchObject([{ number: 1, state: "stored", position: 1, tries: 0 }]);
    expect(phone.status.value).toMatchObject({ unsent: 0, needsYou: 0, lastSentMs: shared.nowMs });
    expect(phone.status.value.oldestUnsentMs).toBeUndefined();
  });

  it("stored with another assessment: the server's own stands beside the phone's", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.judge = () => ({ answer: "stored", assessment: { verdict: "scattered" } });
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect((await phone.outbox())[0]?.serverAssessment).toEqual({ verdict: "scattered" });
  });

  it.each(["held", "refused"])("%s: needs a person, with code and path", async (word) => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.judge = () => ({ answer: word, code: "patient_missing", path: "/body/patient" });
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect(await phone.outbox()).toMatchObject([{ state: word, code: "patient_missing", path: "/body/patient" }]);
    expect(phone.status.value).toMatchObject({ unsent: 0, needsYou: 1 });
    expect((await phone.outbox())[0]?.letter?.body["name"]).toBe("Bella"); // and it is still on the phone
  });

  it("duplicate: the answer was lost, the entry is in the record once", async () => {
    const { shared, phone } = await filedInto(({ route }) =>
      route === "push" ? "lose_answer" : { failed: "timed_out" },
    );
    expect(phone.status.value).toMatchObject({ unsent: 1, network: "timed_out" });
    shared.server.fault = () => undefined;
    await phone.syncNow();
    expect(await phone.outbox()).toMatchObject([{ state: "stored", position: 1 }]);
    expect(shared.server.journal).toHaveLength(1);
  });

  it("held, and in the record once a pull brings it: somebody decided", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.judge = () => ({ answer: "held", code: "rules_unknown", path: "/rules" });
    const { letter, sha } = await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect(phone.status.value.needsYou).toBe(1);
    expect(shared.server.add(JSON.stringify(letter)).sha).toBe(sha);
    await phone.syncNow();
    const [entry] = await phone.outbox();
    expect([entry?.state, entry?.position, entry?.code]).toEqual(["stored", 1, undefined]);
    expect(phone.status.value.needsYou).toBe(0);
  });

  it("an entry that comes back in a pull is in the record, though no answer to it ever came", async () => {
    const { phone } = await filedInto(onPush("lose_answer"));
    // the pull of the same run got through
    expect((await phone.outbox())[0]?.state).toBe("stored");
    await phone.syncNow();
    await quiet(phone);
    expect(phone.status.value.unsent).toBe(0);
  });
});

it("an entry that a pull brought is not set aside for its own failed try", async () => {
  const shared = new FakePhone();
  const { phone } = await shared.signedIn();
  const push = shared.server.push.bind(shared.server);
  const isBad = (bundle: Uint8Array) => text(bundle).includes("spoilt");
  let isFiledAllTheSame = false;
  shared.server.push = async (practice, bundle) => {
    if (!isBad(bundle)) return push(practice, bundle);
    if (isFiledAllTheSame) await push(practice, bundle);
    return problem(500, "server_error");
  };
  await phone.file({ kind: "patient", body: { ...CAT, name: "spoilt" } });
  for (let at = 0; at < 4; at += 1) await phone.syncNow();
  await quiet(phone);
  const [{ tries } = { tries: 0 }] = await phone.outbox();
  for (let at = tries; at < 4; at += 1) await phone.syncNow();
  expect(await phone.outbox()).toMatchObject([{ state: "waiting", tries: 4 }]);
  isFiledAllTheSame = true;
  await phone.syncNow();
  const [entry] = await phone.outbox();
  expect([entry?.state, entry?.position, entry?.tries, entry?.code]).toEqual(["stored", 1, 4, undefined]);
  expect(phone.status.value.needsYou).toBe(0);
});

it("an entry in the record stays there, whatever a late answer says", async () => {
  const { phone } = await filedInto(() => undefined);
  await putAnswers(database(OUTBOX, () => {}), [{ number: 1, state: "held", code: "late" }], 1);
  const [entry] = await phone.outbox();
  expect([entry?.state, entry?.position, entry?.code]).toEqual(["stored", 1, undefined]);
});

/** Answers that look like one and are none, each with the word the status has for it. */
const NO_DELIVERY: [string, Reply, string][] = [
  ["no answer", { failed: "no_network" }, "no_network"],
  ["nothing in time", { failed: "timed_out" }, "timed_out"],
  ["a hotel's page with 200", captivePortal(), "not_ours"],
  ["a redirect", { status: 0, type: "", body: new Uint8Array() }, "not_ours"],
  ["JSON with 200 of somebody else", json({ ok: true }), "not_ours"],
  ["an empty answer", ndjson([]), "not_understood"],
  ["an answer without lines", ndjson([first(1)]), "not_understood"],
  ["a count that is wrong", ndjson([first(2), stored()]), "not_understood"],
  ["one line too many", ndjson([first(1), stored(), stored()]), "not_understood"],
  ["a line of another number", ndjson([first(1), stored({ line: 2 })]), "not_understood"],
  ["an answer to another id", ndjson([first(1), stored({ id: OTHER_PERSON })]), "not_understood"],
  ["stored without a position", ndjson([first(1), JSON.stringify({ line: 1, answer: "stored" })]), "not_understood"],
  ["an unknown word", ndjson([first(1), stored({ answer: "fine" })]), "not_understood"],
  ["an answer cut in the middle", cut(ndjson([first(1), stored()])), "not_understood"],
  ["not found", problem(404, "not_found"), "practice_closed"],
  ["too old", problem(426, "too_old"), "app_too_old"],
  ["a wrong request", problem(400, "bundle_unreadable"), "server_trouble"],
  ["too large", problem(413, "bundle_too_large"), "server_trouble"],
  ["a fault of the server", problem(500, "server_error"), "server_trouble"],
  ["a fault before the server", { status: 502, type: "text/html", body: new Uint8Array() }, "server_trouble"],
  ["busy", problem(503, "record_busy", 2000), "busy"],
  ["too many requests", problem(429, "slow_down", 2000), "busy"],
];

describe("no delivery", () => {
  it.each(NO_DELIVERY)("%s", async (_name, reply, word) => {
    const { shared, phone } = await filedInto(({ route }) => (route === "push" ? reply : undefined));
    expect(await phone.outbox()).toMatchObject([{ state: "waiting", number: 1 }]);
    expect(phone.status.value).toMatchObject({ unsent: 1, network: word, oldestUnsentMs: shared.nowMs });
    expect(phone.status.value.nextTryMs).toBeGreaterThan(shared.nowMs);
    shared.server.fault = () => undefined;
    await phone.syncNow();
    await quiet(phone);
    expect(await phone.outbox()).toMatchObject([{ state: "stored", position: 1 }]);
    expect(phone.status.value).toMatchObject({ unsent: 0, network: undefined });
  });

  it("401: keeps everything, asks for sign-in, and delivers after it", async () => {
    const { shared, phone } = await filedInto(onPush(problem(401, "device_unknown")));
    expect(phone.status.value).toMatchObject({ unsent: 1, signInNeeded: true, signInToSend: true });
    shared.server.fault = () => undefined;
    await phone.signIn("ada", "right");
    await quiet(phone);
    expect(phone.status.value).toMatchObject({ unsent: 0, signInNeeded: false, signInToSend: false });
  });

  it("401 for reading only: handing in goes on", async () => {
    const { phone } = await filedInto(({ route }) => (route === "pull" ? problem(401, "sign_in") : undefined));
    expect(phone.status.value).toMatchObject({ unsent: 0, signInNeeded: true, signInToSend: false });
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect(phone.status.value).toMatchObject({ unsent: 0, signInNeeded: true, signInToSend: false });
  });
});

function first(count: number): string {
  const epoch = "55555555-5555-4555-8555-555555555555";
  return JSON.stringify({ answers: 1, count, epoch, head: 1, server_time_ms: 1 });
}

function stored(change: object = {}): string {
  return JSON.stringify({ line: 1, answer: "stored", position: 1, ...change });
}

function cut(reply: { body: Uint8Array<ArrayBuffer> } & Reply): Reply {
  const whole = text(reply.body);
  return { ...reply, body: new TextEncoder().encode(whole.slice(0, whole.length - 12)) } as Reply;
}
