/** Drafts and letters reach the disk whole, once, in order, flushed; what cannot be filed is refused unharmed. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { type LetterParts, newId } from "../../../client/src/offline/journal.ts";
import { CAT, FakePhone, everything, measurement, quiet } from "./window.ts";

afterEach(() => vi.restoreAllMocks());

/** Records the durability and mode each transaction was really opened with. */
function watchTransactions(): { stores: string[]; mode: string; durability: string | undefined }[] {
  const seen: { stores: string[]; mode: string; durability: string | undefined }[] = [];
  const original = IDBDatabase.prototype.transaction;
  vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...given) {
    const [stores, mode = "readonly", options] = given;
    seen.push({ stores: [stores as string | string[]].flat(), mode, durability: options?.durability });
    return original.apply(this, given);
  });
  return seen;
}

describe("a draft", () => {
  it("comes back as it was kept, newest first, and goes when dropped", async () => {
    const { phone } = await new FakePhone().signedIn();
    const [first, second] = [newId(), newId()];
    await phone.keepDraft({ id: first, updatedMs: 1, content: { typed: "15" } });
    await phone.keepDraft({ id: second, updatedMs: 2, content: { typed: "9" } });
    await phone.keepDraft({ id: first, updatedMs: 3, content: { typed: "150" } });
    expect(await phone.drafts()).toEqual([
      { id: first, updatedMs: 3, content: { typed: "150" } },
      { id: second, updatedMs: 2, content: { typed: "9" } },
    ]);
    await phone.dropDraft(first);
    expect((await phone.drafts()).map(({ id }) => id)).toEqual([second]);
  });

  it("lands in the order it was asked for, also when nobody waits in between", async () => {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    const content = (at: number) => ({ typed: "x".repeat(at % 2 === 0 ? 60_000 : 1), at });
    await Promise.all([0, 1, 2, 3, 4, 5].map((at) => phone.keepDraft({ id, updatedMs: at, content: content(at) })));
    expect((await phone.drafts())[0]?.content).toEqual(content(5));
  });

  it("that is a half-typed form is told apart from measurements, and goes in the filing of its letter", async () => {
    const { phone } = await new FakePhone().signedIn();
    const [form, open] = [newId(), newId()];
    await phone.keepDraft({ id: form, updatedMs: 1, content: { form: true, texts: { name: "Qu" } } });
    await phone.keepDraft({ id: open, updatedMs: 2, content: { typed: "148" } });
    expect((await phone.drafts()).map(({ id }) => id)).toEqual([open]);
    expect((await phone.forms()).map(({ id }) => id)).toEqual([form]);
    await phone.file({ kind: "patient", body: CAT }, form);
    expect([await phone.forms(), (await phone.drafts()).length]).toEqual([[], 1]);
    const late = phone.keepDraft({ id: form, updatedMs: 3, content: { form: true } }); // a key pressed after *Save*
    await expect(late).rejects.toMatchObject({ code: "already_filed" });
  });

  it("rewritten where it still lies is not brought back after it was filed or dropped", async () => {
    const { phone } = await new FakePhone().signedIn();
    const [open, filed, dropped] = [newId(), newId(), newId()];
    for (const id of [open, filed, dropped]) await phone.keepDraft({ id, updatedMs: 1, content: { typed: "1" } });
    await phone.file({ kind: "patient", body: CAT }, filed);
    await phone.dropDraft(dropped);
    for (const id of [open, filed, dropped]) await phone.keepDraft({ id, updatedMs: 2, content: { typed: "2" } }, true);
    expect((await phone.drafts()).map(({ id, content }) => [id, content])).toEqual([[open, { typed: "2" }]]);
  });

  it("survives a restart of the app", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    await phone.keepDraft({ id: newId(), updatedMs: 1, content: { typed: "148" } });
    phone.close();
    const { phone: again } = await shared.window();
    expect(again.who.value?.personName).toBe("Ada North");
    expect((await again.drafts())[0]?.content).toEqual({ typed: "148" });
  });

  it("is flushed to disk before its promise resolves", async () => {
    const { phone } = await new FakePhone().signedIn();
    const seen = watchTransactions();
    await phone.keepDraft({ id: newId(), updatedMs: 1, content: {} });
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    const writing = seen.filter(({ mode, stores }) => mode === "readwrite" && !stores.includes("letters"));
    const ownWork = writing.filter(({ stores }) => stores.includes("drafts") || stores.includes("entries"));
    expect(ownWork.length).toBeGreaterThanOrEqual(3); // draft, letter, its answer
    expect(new Set(ownWork.map(({ durability }) => durability))).toEqual(new Set(["strict"]));
  });

  it("is refused while nobody is signed in", async () => {
    const { phone } = await new FakePhone().window();
    const keeping = phone.keepDraft({ id: newId(), updatedMs: 1, content: {} });
    await expect(keeping).rejects.toMatchObject({ code: "sign_in_needed" });
  });
});

describe("filing", () => {
  it("adds the entry and removes the draft in one transaction", async () => {
    const { phone } = await new FakePhone().signedIn();
    const draft = newId();
    await phone.keepDraft({ id: draft, updatedMs: 1, content: {} });
    const seen = watchTransactions();
    const filed = await phone.file({ kind: "patient", body: CAT }, draft);
    const first = seen.find(({ mode, stores }) => mode === "readwrite" && stores.includes("entries"));
    expect(first).toMatchObject({ stores: ["entries", "drafts"], durability: "strict" });
    expect(filed.id).toBe(draft);
    expect(await phone.drafts()).toEqual([]);
  });

  it("forgets what was half typed in the same transaction, of this practice and of no other name", async () => {
    const { phone } = await new FakePhone().signedIn();
    await phone.remember("bag_edit:new", { name: "Van" });
    await phone.remember("bag_in_use", "b1");
    const seen = watchTransactions();
    await phone.file({ kind: "bag", body: { name: "Van" } }, newId(), "bag_edit:new");
    const first = seen.find(({ mode, stores }) => mode === "readwrite" && stores.includes("entries"));
    expect(first).toMatchObject({ stores: ["entries", "drafts", "meta"], durability: "strict" });
    expect([await phone.recall("bag_edit:new"), await phone.recall("bag_in_use")]).toEqual([undefined, "b1"]);
  });

  it("leaves both as they were when its transaction fails", async () => {
    const { phone } = await new FakePhone().signedIn();
    const draft = newId();
    await phone.keepDraft({ id: draft, updatedMs: 1, content: { typed: "150" } });
    vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(function (this: IDBObjectStore) {
      this.transaction.abort(); // as a full disk does, after the draft's removal was asked for
      throw new DOMException("no room", "QuotaExceededError");
    });
    await phone.file({ kind: "patient", body: CAT }, draft).then(
      () => expect.unreachable("filed without an entry"),
      () => undefined,
    );
    vi.restoreAllMocks();
    expect((await phone.drafts()).map(({ id }) => id)).toEqual([draft]);
    expect(await phone.outbox()).toEqual([]);
    expect((await phone.file({ kind: "patient", body: CAT }, draft)).number).toBe(1); // the count took no harm either
  });

  it("counts from 1 without a gap, also over refusals and a restart", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    const numbers = [(await phone.file({ kind: "patient", body: CAT })).number];
    await expect(phone.file({ kind: "patient", body: { species: "cow", name: "x" } })).rejects.toMatchObject({
      ...{ code: "not_valid", path: "/body/species", why: "not_in_list" },
    });
    numbers.push((await phone.file({ kind: "patient", body: CAT })).number);
    await quiet(phone);
    phone.close();
    const { phone: again } = await shared.window();
    numbers.push((await again.file({ kind: "patient", body: CAT })).number);
    expect(numbers).toEqual([1, 2, 3]);
  });

  it("makes the bytes once: what is sent has the fingerprint and the letter that were handed back", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    const { id } = await phone.file({ kind: "patient", body: CAT });
    const worked = { rules: "v1", assessment: { verdict: "steady" } };
    const filed = await phone.file({ kind: "measurement", body: measurement(id), ...worked });
    await quiet(phone);
    const sent = shared.server.journal[1];
    expect(sent?.sha).toBe(filed.sha);
    expect(JSON.parse(sent?.letter ?? "")).toEqual(filed.letter);
    expect(filed.letter).toMatchObject({ author: phone.who.value?.person, kind: "measurement", schema: 1, ...worked });
  });

  it("files a draft once, though a late write or a second press follows", async () => {
    const { phone } = await new FakePhone().signedIn();
    const draft = newId();
    await phone.keepDraft({ id: draft, updatedMs: 1, content: {} });
    await phone.file({ kind: "patient", body: CAT }, draft);
    const code = "already_filed";
    const other = { ...CAT, name: "Other" };
    await expect(phone.file({ kind: "patient", body: other }, draft)).rejects.toMatchObject({ code });
    await expect(phone.keepDraft({ id: draft, updatedMs: 2, content: {} })).rejects.toMatchObject({ code });
    expect(await phone.drafts()).toEqual([]);
    expect(await phone.outbox()).toHaveLength(1);
  });

  it("takes the setting a letter was made from away with it, and leaves it where another letter has the id", async () => {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    await phone.remember("edit", "Van");
    await phone.file({ kind: "patient", body: CAT }, id, "edit");
    expect(await phone.recall("edit")).toBeUndefined();
    await phone.remember("edit", "Car");
    const other = phone.file({ kind: "patient", body: { ...CAT, name: "Other" } }, id, "edit");
    await expect(other).rejects.toMatchObject({ code: "already_filed" });
    expect(await phone.recall("edit")).toBe("Car");
  });

  it("refuses what the server would refuse for good, and says where", async () => {
    const { phone } = await new FakePhone().signedIn();
    const { patient: _patient, ...nameless } = measurement(newId()) as { patient: string };
    const refused = async (parts: LetterParts, word: object) => expect(phone.file(parts)).rejects.toMatchObject(word);
    await refused({ kind: "measurement", body: nameless }, { path: "/body/patient", why: "missing" });
    await refused({ kind: "patient", body: { ...CAT, name: "\ud83d" } }, { why: "wrong_form" });
    const assessment = { long: "x".repeat(33_000) };
    await refused({ kind: "measurement", body: measurement(newId()), assessment }, { code: "too_large" });
    expect(await phone.outbox()).toEqual([]);
  });

  it("needs the phone's own store alone: a practice's copy of the record that does not open keeps no letter out", async () => {
    const { phone } = await new FakePhone().signedIn();
    const transaction = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...given) {
      if (this.name.startsWith("quietcuff-practice-")) throw new DOMException("spoilt", "UnknownError");
      return transaction.apply(this, given);
    });
    const { number, letter } = await phone.file({ kind: "patient", body: CAT });
    expect([number, letter.basis]).toEqual([1, 0]);
  });

  it("goes on after a screen failed at the news of a commit", async () => {
    const { phone } = await new FakePhone().signedIn();
    const seen: unknown[] = [];
    const others = process.listeners("unhandledRejection");
    process.removeAllListeners("unhandledRejection").on("unhandledRejection", (mistake) => seen.push(mistake));
    let isFirst = true;
    const stop = phone.changed.subscribe(() => {
      if (isFirst) isFirst = false; // the look at subscribing
      else throw new Error("a mistake in a screen");
    });
    await phone.keepDraft({ id: newId(), updatedMs: 1, content: 1 });
    await new Promise((resolve) => setTimeout(resolve, 5));
    stop();
    await phone.keepDraft({ id: newId(), updatedMs: 2, content: 2 });
    process.removeAllListeners("unhandledRejection");
    for (const other of others) process.on("unhandledRejection", other);
    expect((await phone.drafts()).map(({ content }) => content)).toEqual([2, 1]);
    expect(seen.length).toBeGreaterThan(0); // the mistake was not swallowed
  });

  it("asks the browser once to keep the store, and keeps the answer", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    expect(phone.status.value.keptByBrowser).toBeUndefined();
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    await phone.file({ kind: "patient", body: CAT });
    await quiet(phone);
    expect([shared.persistAsked, phone.status.value.keptByBrowser]).toEqual([1, true]);
  });
});

describe("settings", () => {
  it("are remembered boxed, and recalled", async () => {
    const { phone } = await new FakePhone().signedIn();
    expect(await phone.recall("bag")).toBeUndefined();
    await phone.remember("bag", [20, 25, 30]);
    expect(await phone.recall("bag")).toEqual([20, 25, 30]);
    const meta = (await everything()).find(({ store }) => store === "meta");
    const own = meta?.rows.find((row) => (row as { name: string }).name.startsWith("own:"));
    expect(own).toHaveProperty("box.box", "phone.1");
  });
});
