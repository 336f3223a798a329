/** No row of any store on the phone shows what was typed: searched for a canary, after proving the search finds one. */
import { expect, it } from "vitest";
import { newId } from "../../../client/src/offline/journal.ts";
import { CAT, FakePhone, answer, everything, measurement, quiet, strangeLetter } from "./window.ts";

const CANARY = "canaryXq7Zt";

/** Every text hidden in a value: strings as they are, bytes in three readings, whatever lies inside. */
function textsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (value instanceof ArrayBuffer) return textsIn(new Uint8Array(value));
  if (value instanceof Uint8Array) {
    return ["latin1", "utf16le", "utf8"].map((how) => Buffer.from(value).toString(how as BufferEncoding));
  }
  if (typeof value !== "object" || value === null) return [String(value)];
  return Object.entries(value).flatMap(([key, inside]) => [key, ...textsIn(inside)]);
}

async function placesOf(word: string): Promise<string[]> {
  const stores = await everything();
  return stores.flatMap(({ database, store, rows }) =>
    rows.flatMap((row) => (textsIn(row).some((one) => one.includes(word)) ? [`${database}/${store}`] : [])),
  );
}

it("finds a canary where one is (else the next test proves nothing)", async () => {
  await new FakePhone().signedIn();
  const database = await answer(indexedDB.open("quietcuff-outbox"));
  const meta = database.transaction("meta", "readwrite").objectStore("meta");
  await answer(meta.put({ name: "planted", box: { bytes: new TextEncoder().encode(`…${CANARY}…`).buffer } }));
  database.close();
  expect(await placesOf(CANARY)).toEqual(["quietcuff-outbox/meta"]);
});

it("shows no word that was typed, pulled, remembered or answered, in any row", async () => {
  const shared = new FakePhone();
  shared.server.judge = () => ({ answer: "stored", assessment: { note: CANARY } });
  const { phone } = await shared.signedIn();
  await phone.keepDraft({ id: newId(), updatedMs: 1, content: { typed: CANARY } });
  await phone.remember("bag", { note: CANARY });
  const { id } = await phone.file({ kind: "patient", body: { ...CAT, name: CANARY, mark: CANARY } });
  await phone.file({ kind: "measurement", body: measurement(id), assessment: { note: CANARY }, reason: CANARY });
  shared.server.add(strangeLetter("patient", { ...CAT, name: `strange ${CANARY}` }), 9, { note: CANARY });
  await phone.syncNow();
  await quiet(phone);
  const rows = Object.fromEntries((await everything()).map(({ store, rows: all }) => [store, all.length]));
  expect(rows).toMatchObject({ entries: 2, drafts: 1, letters: 3, keys: 1, cursor: 1 }); // all of it did lie there
  expect(JSON.stringify(await phone.patients())).toContain(`strange ${CANARY}`);
  expect(await placesOf(CANARY)).toEqual([]);
  expect(await placesOf("Ada North")).toEqual([]);
  expect(await placesOf("Hill practice")).toEqual([]);
});
