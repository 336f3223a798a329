/*
 * Training apart from the record: what is filed there, and what is not in the outbox and not on the air because of it.
 * Source: the project's own order for training ("its own store that sending never touches"); IndexedDB 3.0 for what is counted.
 */
import { expect, it, vi } from "vitest";
import { type TrainingPhone, openTraining } from "../../../client/src/offline/training.ts";
import type { LetterParts, Phone } from "../../../client/src/offline/phone_types.ts";
import { FakePhone, answer, everything, measurement, newId, quiet } from "./window.ts";

const SAMPLES: LetterParts[] = [
  { kind: "patient", body: { species: "cat", name: "Thimble" } },
  { kind: "bag", body: { name: "Learner's bag", cuffs: [{ width_mm: 25 }] } },
];

async function rowsIn(database: string, store: string): Promise<unknown[]> {
  return (await everything()).filter((one) => one.database === database && one.store === store).flatMap(({ rows }) => rows);
}

async function both(): Promise<{ shared: FakePhone; record: Phone; training: TrainingPhone }> {
  const shared = new FakePhone();
  const { phone } = await shared.signedIn();
  return { shared, record: phone, training: await openTraining(phone, SAMPLES) };
}

/** A whole visit in training: a draft, filed under an animal made there. */
async function fileOne(training: TrainingPhone): Promise<string> {
  const animal = await training.file({ kind: "patient", body: { species: "cat", name: "Bodkin" } });
  const draft = newId();
  await training.keepDraft({ id: draft, updatedMs: 1, content: { typed: "141" } });
  const filed = await training.file({ kind: "measurement", body: measurement(animal.id) }, draft);
  expect(filed.id).toBe(draft);
  return animal.id;
}

it("files with no row in the outbox, no request, and nothing counted as not sent", async () => {
  const { shared, record, training } = await both();
  const requests = shared.server.requests.length;
  await fileOne(training);
  await training.syncNow();
  await record.syncNow(); // the record goes on sending meanwhile, and still finds nothing
  await quiet(record);
  expect(await rowsIn("quietcuff-training", "entries")).toHaveLength(4);
  expect(await rowsIn("quietcuff-outbox", "entries")).toEqual([]);
  expect(await rowsIn("quietcuff-outbox", "drafts")).toEqual([]);
  expect(shared.server.requests.slice(requests).filter(({ route }) => route === "push")).toEqual([]);
  expect(shared.server.journal).toEqual([]);
  expect([record.status.value.unsent, training.status.value.unsent]).toEqual([0, 0]);
  expect(await record.patients()).toEqual([]);
});

it("says training only of everything, and never that it is in the record", async () => {
  const { training } = await both();
  const animal = await fileOne(training);
  const states = [...(await training.outbox()), ...(await training.visits(animal))].map(({ state }) => state);
  expect(states).toEqual(Array.from({ length: 5 }, () => "training"));
  expect((await training.patients()).map(({ inRecord }) => inRecord)).toEqual([false, false]);
});

it("is not offered even when the row itself gets into the outbox: sending takes waiting rows of its practice alone", async () => {
  const { shared, record, training } = await both();
  await fileOne(training);
  const rows = (await rowsIn("quietcuff-training", "entries")) as { number: number }[];
  const outbox = await answer(indexedDB.open("quietcuff-outbox"));
  const entries = outbox.transaction("entries", "readwrite").objectStore("entries");
  for (const row of rows) await answer(entries.put(row));
  outbox.close();
  await record.syncNow();
  await quiet(record);
  expect(await rowsIn("quietcuff-outbox", "entries")).toHaveLength(4); // they did lie there
  expect(shared.server.journal).toEqual([]);
});

it("finds its own work again after a restart, and does not file the samples twice", async () => {
  const { record, training } = await both();
  await fileOne(training);
  await training.keepDraft({ id: newId(), updatedMs: 2, content: { typed: "150" } });
  training.close();
  const again = await openTraining(record, SAMPLES);
  expect(await again.drafts()).toMatchObject([{ content: { typed: "150" } }]);
  expect(await again.outbox()).toHaveLength(4);
});

/** Every write of a row into the store's entries from here on ends the transaction, as a phone that dies then does, but for the first `free`. */
function diesAfter(free: number): void {
  let left = free;
  const { add } = IDBObjectStore.prototype;
  vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(function (this: IDBObjectStore, ...given) {
    left -= 1;
    if (left < 0) this.transaction.abort();
    return add.apply(this, given);
  });
}

it.each([0, 1])("has all samples or none, though the phone died at number %i of the first filling", async (free) => {
  const { phone } = await new FakePhone().signedIn();
  diesAfter(free);
  await openTraining(phone, SAMPLES).then((training) => training.close(), () => undefined);
  vi.restoreAllMocks();
  expect(await rowsIn("quietcuff-training", "entries")).toEqual([]);
  const again = await openTraining(phone, SAMPLES);
  expect((await again.outbox()).length).toBe(SAMPLES.length);
});

it("keeps what was made in it when the phone dies while it begins anew", async () => {
  const { training } = await both();
  await fileOne(training);
  diesAfter(1);
  await training.startAnew().catch(() => undefined);
  vi.restoreAllMocks();
  expect(await rowsIn("quietcuff-training", "entries")).toHaveLength(4);
});

it("files the samples once, though two windows begin at the same moment", async () => {
  const { phone } = await new FakePhone().signedIn();
  const first = await openTraining(phone, []);
  const [one, two] = await Promise.all([openTraining(phone, SAMPLES), openTraining(phone, SAMPLES)]);
  expect((await rowsIn("quietcuff-training", "entries")).length).toBe(SAMPLES.length);
  for (const each of [first, one, two]) each.close();
});

it("begins anew at one act, and the record keeps all of its own", async () => {
  const { record, training } = await both();
  await record.file({ kind: "patient", body: { species: "dog", name: "Quill" } });
  await fileOne(training);
  await training.startAnew();
  expect((await training.patients()).map(({ letter }) => letter.body["name"])).toEqual(["Thimble"]);
  expect(await training.drafts()).toEqual([]);
  expect((await record.patients()).map(({ letter }) => letter.body["name"])).toEqual(["Quill"]);
});

it("keeps settings of its own", async () => {
  const { record, training } = await both();
  await training.remember("bag", "20, 25");
  expect([await training.recall("bag"), await record.recall("bag")]).toEqual(["20, 25", undefined]);
});

it("has nothing in clear on the disk", async () => {
  const { training } = await both();
  await training.file({ kind: "patient", body: { species: "cat", name: "canaryXq7Zt" } });
  const texts = JSON.stringify(await everything(), (_, value: unknown) =>
    value instanceof ArrayBuffer ? Buffer.from(value).toString("latin1") : value,
  );
  expect(texts).toContain("quietcuff-training");
  expect(texts).not.toContain("canaryXq7Zt");
});

it("files nothing while nobody is signed in", async () => {
  const { record, training } = await both();
  await record.signOut();
  await expect(training.file(SAMPLES[0] as LetterParts)).rejects.toMatchObject({ code: "sign_in_needed" });
});
