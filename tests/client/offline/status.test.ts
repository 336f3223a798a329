/** The line that is always in sight says what is so: counted in the store, none left out, none said too early. */
import { describe, expect, it } from "vitest";
import type { Status } from "../../../client/src/offline/phone_types.ts";
import { CAT, FakePhone, answer, newId, quiet, until } from "./window.ts";

/** Changes one row of the outbox database behind the app's back. */
async function spoil(store: string, change: (row: Record<string, unknown>) => Record<string, unknown>): Promise<void> {
  const database = await answer(indexedDB.open("quietcuff-outbox"));
  const rows = database.transaction(store, "readwrite").objectStore(store);
  for (const row of await answer(rows.getAll())) await answer(rows.put(change(row as Record<string, unknown>)));
  database.close();
}

describe("the status", () => {
  it("counts none on a new phone, and says so", async () => {
    const { phone } = await new FakePhone().window();
    expect(phone.status.value).toMatchObject({ unsent: 0, needsYou: 0, sending: false, signInNeeded: false });
  });

  it("knows an entry as unsent from the moment its filing resolved, and since when", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.fault = () => ({ failed: "no_network" });
    const filedMs = shared.nowMs;
    await phone.file({ kind: "patient", body: CAT });
    expect(phone.status.value).toMatchObject({ unsent: 1, unsentElsewhere: 0, oldestUnsentMs: filedMs });
    await quiet(phone);
    shared.nowMs += 3_600_000;
    await phone.file({ kind: "patient", body: CAT });
    expect(phone.status.value).toMatchObject({ unsent: 2, oldestUnsentMs: filedMs });
  });

  it("takes back that the store was lost as soon as a draft is kept: a count may have failed, and a draft is in no count", async () => {
    const { phone } = await new FakePhone().signedIn();
    const status = phone.status as { value: Status };
    status.value = { ...status.value, storage: "lost" }; // what a count that failed leaves
    await phone.keepDraft({ id: newId(), updatedMs: 1, content: {} });
    await until(() => phone.status.value.storage === undefined, "the store is well again");
  });

  it("tells apart what was filed for another practice, and counts it all the same", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.fault = () => ({ failed: "no_network" });
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    await spoil("entries", (row) => ({ ...row, practice: "77777777-7777-4777-8777-777777777777" }));
    await phone.file({ kind: "patient", body: CAT });
    expect(phone.status.value).toMatchObject({ unsent: 2, unsentElsewhere: 1 });
    expect(await phone.outbox()).toHaveLength(1);
  });

  it("says `sending` while something is handed in, and not while it only fetches", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    let open = () => {};
    const gate = new Promise<void>((resolve) => (open = resolve));
    const [push, pull] = [shared.server.push.bind(shared.server), shared.server.pull.bind(shared.server)];
    const seen: [string, boolean][] = [];
    shared.server.pull = async (...given) => {
      await new Promise((resolve) => setTimeout(resolve, 20));
      seen.push(["pull", phone.status.value.sending]);
      return pull(...given);
    };
    await phone.syncNow();
    shared.server.push = async (...given) => gate.then(() => push(...given));
    void phone.file({ kind: "patient", body: CAT });
    await until(() => phone.status.value.sending, "sending");
    seen.push(["push", phone.status.value.sending]);
    open();
    await until(() => !phone.status.value.sending, "sent");
    await quiet(phone);
    expect(seen).toEqual([["pull", false], ["push", true], ["pull", false]]);
  });

  it("falls to none for what was filed while a run was fetching, with no further trigger", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    let open = () => {};
    const gate = new Promise<void>((resolve) => (open = resolve));
    const pull = shared.server.pull.bind(shared.server);
    let isFetching = false;
    shared.server.pull = async (...given) => {
      isFetching = true;
      await gate;
      return pull(...given);
    };
    const run = phone.syncNow();
    await until(() => isFetching, "the run fetching");
    await phone.file({ kind: "patient", body: CAT });
    open();
    await run;
    expect(phone.status.value.unsent).toBe(0);
    expect(shared.server.journal).toHaveLength(1);
  });

  it("is the same after a restart, counted from the disk", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    const sentMs = shared.nowMs;
    shared.server.fault = () => ({ failed: "no_network" });
    shared.nowMs += 60_000;
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    phone.close();
    const { phone: again } = await shared.window();
    const counted = { unsent: 1, lastSentMs: sentMs, oldestUnsentMs: sentMs + 60_000, keptByBrowser: true };
    expect(again.status.value).toMatchObject(counted);
  });
});

describe("a spoilt disk", () => {
  it("with an unreadable person asks to sign in again, and then everything is there", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    phone.close();
    const bent = (box: unknown) => ({ ...(box as object), iv: new Uint8Array(12) });
    await spoil("meta", (row) => (row["name"] === "person" ? { ...row, box: bent(row["box"]) } : row));
    const { phone: again } = await shared.window();
    expect(again.who.value).toBeUndefined();
    await again.signIn("ada", "right");
    expect(await again.outbox()).toHaveLength(1);
  });

  it("with an unreadable data key is told in a word, not by a blank page", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    phone.close();
    await spoil("keys", (row) => ({ ...row, iv: new Uint8Array(12) }));
    await expect(shared.window()).rejects.toMatchObject({ code: "lost" });
  });
});
