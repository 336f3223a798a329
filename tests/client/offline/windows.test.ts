/** Two windows on one phone, two people on one phone, signing in and out: nothing is lost, doubled or mixed up. */
import { describe, expect, it } from "vitest";
import { newId } from "../../../client/src/offline/journal.ts";
import { OTHER_PERSON, problem } from "./fake_server.ts";
import { CAT, FakePhone, everything, measurement, quiet, until } from "./window.ts";

describe("two windows", () => {
  it("see each other's commits and count the same", async () => {
    const shared = new FakePhone();
    const { phone: one } = await shared.signedIn();
    const { phone: two } = await shared.window();
    shared.server.fault = () => ({ failed: "no_network" });
    await quiet(two);
    const before = two.changed.value;
    await one.file({ kind: "patient", body: CAT });
    await until(() => two.status.value.unsent === 1, "the other window's count");
    expect(two.changed.value).toBeGreaterThan(before);
    expect((await two.patients()).map(({ inRecord }) => inRecord)).toEqual([false]);
  });

  it("filing at once get dense numbers, and each entry reaches the server once", async () => {
    const shared = new FakePhone();
    const { phone: one } = await shared.signedIn();
    const { phone: two } = await shared.window();
    const body = (at: number) => ({ ...CAT, name: `${at}` });
    const filing = Array.from({ length: 20 }, (_, at) =>
      (at % 2 === 0 ? one : two).file({ kind: "patient", body: body(at) }),
    );
    const numbers = (await Promise.all(filing)).map(({ number }) => number);
    expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, at) => at + 1));
    await until(() => one.status.value.unsent === 0 && two.status.value.unsent === 0, "all in the record");
    expect(new Set(shared.server.journal.map(({ letter }) => letter)).size).toBe(20);
    expect(shared.server.journal).toHaveLength(20);
  });

  it("do not both hand in: the second finds the lock taken, and what it filed goes out all the same", async () => {
    const shared = new FakePhone();
    const { phone: one } = await shared.signedIn();
    const { phone: two } = await shared.window();
    await quiet(two);
    const push = shared.server.push.bind(shared.server);
    let isOpen = () => {};
    const gate = new Promise<void>((resolve) => (isOpen = resolve));
    shared.server.push = async (...given) => gate.then(() => push(...given));
    await one.file({ kind: "patient", body: { ...CAT, name: "one" } });
    await until(() => one.status.value.sending, "the first window at it");
    await two.file({ kind: "patient", body: { ...CAT, name: "two" } });
    await until(() => shared.lockRefusals > 0, "the second window refused");
    isOpen();
    await until(() => one.status.value.unsent === 0 && two.status.value.unsent === 0, "both in the record");
    expect(shared.server.journal).toHaveLength(2);
  });

  it("cannot file the same draft twice", async () => {
    const shared = new FakePhone();
    const { phone: one } = await shared.signedIn();
    const { phone: two } = await shared.window();
    const draft = newId();
    await one.keepDraft({ id: draft, updatedMs: 1, content: {} });
    const other = { ...CAT, name: "B" };
    const tries = [one.file({ kind: "patient", body: CAT }, draft), two.file({ kind: "patient", body: other }, draft)];
    const ended = await Promise.allSettled(tries);
    expect(ended.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    await quiet(one);
    expect(await one.outbox()).toHaveLength(1);
  });

  it("sign in and out together", async () => {
    const shared = new FakePhone();
    const { phone: one } = await shared.window();
    const { phone: two } = await shared.window();
    await one.signIn("ada", "right");
    await until(() => two.who.value?.personName === "Ada North", "the other window's person");
    await two.signOut();
    await until(() => one.who.value === undefined, "the first window signed out");
  });

  it("that sign in first at the same moment share one data key", async () => {
    const shared = new FakePhone();
    const [{ phone: one }, { phone: two }] = [await shared.window(), await shared.window()];
    await Promise.all([one.signIn("ada", "right"), two.signIn("ada", "right")]);
    await one.keepDraft({ id: newId(), updatedMs: 1, content: "one" });
    await two.keepDraft({ id: newId(), updatedMs: 2, content: "two" });
    expect((await one.drafts()).map(({ content }) => content)).toEqual(["two", "one"]);
  });
});

describe("signing in", () => {
  it("fails with a word and changes nothing", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.window();
    await expect(phone.signIn("ada", "wrong")).rejects.toMatchObject({ code: "wrong_login" });
    shared.server.fault = () => problem(429, "slow_down", 60_000);
    await expect(phone.signIn("ada", "right")).rejects.toMatchObject({ code: "wait" });
    shared.server.fault = () => ({ failed: "no_network" });
    await expect(phone.signIn("ada", "right")).rejects.toMatchObject({ code: "no_network" });
    shared.server.fault = () => ({ status: 200, type: "text/html", body: new Uint8Array() });
    await expect(phone.signIn("ada", "right")).rejects.toMatchObject({ code: "not_ours" });
    expect(phone.who.value).toBeUndefined();
    expect((await everything()).flatMap(({ rows }) => rows)).toEqual([]);
  });

  it("is remembered without network, also after a restart", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    phone.close();
    shared.server.fault = () => ({ failed: "no_network" });
    const { phone: again } = await shared.window();
    expect(again.who.value).toMatchObject({ personName: "Ada North", practiceName: "Hill practice", role: "nurse" });
    await again.file({ kind: "patient", body: CAT });
    expect(await again.patients()).toHaveLength(1);
  });
});

describe("signing out", () => {
  it("keeps everything unsent, shows nothing, and goes on handing in", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.fault = () => ({ failed: "no_network" });
    const draft = newId();
    await phone.keepDraft({ id: draft, updatedMs: 1, content: { typed: "150" } });
    await phone.file({ kind: "patient", body: CAT });
    await phone.signOut();
    await quiet(phone);
    expect(phone.status.value.unsent).toBe(1);
    expect([await phone.drafts(), await phone.outbox(), await phone.patients()]).toEqual([[], [], []]);
    phone.close();
    shared.server.fault = () => undefined;
    shared.server.requests = [];
    const { phone: again } = await shared.window();
    await until(() => again.status.value.unsent === 0, "handed in with nobody signed in");
    expect(shared.server.requests.map(({ route }) => route)).not.toContain("pull");
    expect(shared.server.signedOut).toBe(1); // told at the first contact, once
    await again.syncNow();
    expect(shared.server.signedOut).toBe(1);
    await again.signIn("ada", "right");
    expect((await again.drafts()).map(({ id }) => id)).toEqual([draft]);
  });

  it("lets a colleague of the practice sign in and hand in the first one's entries under their name", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.fault = () => ({ failed: "no_network" });
    const { id } = await phone.file({ kind: "patient", body: CAT });
    await phone.signOut();
    shared.server.fault = () => undefined;
    shared.server.person = OTHER_PERSON;
    await phone.signIn("ben", "right");
    await phone.file({ kind: "measurement", body: measurement(id) });
    await until(() => phone.status.value.unsent === 0, "both in the record");
    const authors = shared.server.journal.map(({ letter }) => (JSON.parse(letter) as { author: string }).author);
    expect(authors).toEqual(["22222222-2222-4222-8222-222222222222", OTHER_PERSON]);
    expect(await phone.visits(id)).toMatchObject([{ inRecord: true }]);
  });
});
