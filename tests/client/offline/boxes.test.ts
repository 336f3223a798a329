/** A box opens with its own key in its own place, unchanged, and in no other case. AES-GCM: NIST SP 800-38D. */
import { describe, expect, it } from "vitest";
import { type DataKey, open, openBytes, seal, sealBytes } from "../../../client/src/offline/boxes.ts";
import { makeDataKey, openDataKey, wrapAgain } from "../../../client/src/offline/data_keys.ts";
import { database } from "../../../client/src/offline/database.ts";
import { OUTBOX } from "../../../client/src/offline/rows.ts";
import { putWrap } from "../../../client/src/offline/writes.ts";
import { PERSON, OTHER_PERSON, PRACTICE } from "./fake_server.ts";
import { FakePhone, everything } from "./window.ts";

/** NIST's GCM test vectors (gcmEncryptExtIV256): key, iv, AAD, plain text → cipher text and tag; from memory. */
const NIST = {
  key: "feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308",
  iv: "cafebabefacedbaddecaf888",
  aad: "feedfacedeadbeeffeedfacedeadbeefabaddad2",
  plain:
    "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72" +
    "1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39",
  sealed:
    "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa" +
    "8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662" +
    "76fc6ece0f4e1768cddf8853bb2d551b",
};

async function dataKey(): Promise<DataKey> {
  return openDataKey(await makeDataKey(PRACTICE, PERSON));
}

const fromHex = (text: string) => new Uint8Array(Buffer.from(text, "hex"));

describe("a box", () => {
  it("gives back what was sealed, bytes and JSON", async () => {
    const key = await dataKey();
    const plain = new TextEncoder().encode('{"name":"Bella ü 🐈"}');
    expect(await openBytes(key, "entries", "a", await sealBytes(key, "entries", "a", plain))).toEqual(plain);
    const value = { x: [1, null, "ü"] };
    expect(await open(key, "drafts", "b", await seal(key, "drafts", "b", value))).toEqual(value);
  });

  it("has another iv each time, 96 bits", async () => {
    const key = await dataKey();
    const boxes = await Promise.all(Array.from({ length: 200 }, () => seal(key, "drafts", "a", 1)));
    expect(new Set(boxes.map(({ iv }) => Buffer.from(iv).toString("hex"))).size).toBe(200);
    expect(new Set(boxes.map(({ iv }) => iv.length))).toEqual(new Set([12]));
  });

  it("stays shut for another key, store, row, and for one changed bit", async () => {
    const key = await dataKey();
    const box = await seal(key, "drafts", "a", "secret");
    const other = { ...(await dataKey()), id: key.id };
    const bent = { ...box, bytes: box.bytes.slice(0) };
    new Uint8Array(bent.bytes).set([(new Uint8Array(box.bytes)[0] as number) ^ 1]);
    expect(await open(key, "drafts", "a", box)).toBe("secret"); // the same calls do open it
    await expect(open(other, "drafts", "a", box)).rejects.toThrow();
    await expect(open({ ...key, id: "another" }, "drafts", "a", box)).rejects.toThrow();
    await expect(open(key, "entries", "a", box)).rejects.toThrow();
    await expect(open(key, "drafts", "b", box)).rejects.toThrow();
    await expect(open(key, "drafts", "a", bent)).rejects.toThrow();
  });

  it("opens a box made elsewhere: NIST's vector, with store and row as its added data", async () => {
    const secret = await crypto.subtle.importKey("raw", fromHex(NIST.key), "AES-GCM", false, ["encrypt", "decrypt"]);
    const given = { name: "AES-GCM", iv: fromHex(NIST.iv), additionalData: fromHex(NIST.aad) };
    const sealed = await crypto.subtle.encrypt(given, secret, fromHex(NIST.plain));
    expect(Buffer.from(sealed).toString("hex")).toBe(NIST.sealed);
    const ours = { name: "AES-GCM", iv: fromHex(NIST.iv), additionalData: new TextEncoder().encode("entries\u0000a") };
    const bytes = await crypto.subtle.encrypt(ours, secret, fromHex(NIST.plain));
    const box = { key: "k", box: "phone.1" as const, iv: fromHex(NIST.iv), bytes };
    const opened = await openBytes({ id: "k", practice: PRACTICE, secret }, "entries", "a", box);
    expect(Buffer.from(opened).toString("hex")).toBe(NIST.plain);
  });
});

describe("the data key", () => {
  it("is one for a practice, wrapped for each person by a key that cannot be read out", async () => {
    const first = await makeDataKey(PRACTICE, PERSON);
    const second = await wrapAgain(first, OTHER_PERSON);
    expect([first.key.extractable, second.key.extractable]).toEqual([false, false]);
    expect((await openDataKey(first)).secret.extractable).toBe(false);
    const box = await seal(await openDataKey(first), "drafts", "a", "shared");
    expect(await open(await openDataKey(second), "drafts", "a", box)).toBe("shared");
  });

  it("stays one when a second window made another at the same moment: the first kept wins", async () => {
    new FakePhone(); // an empty disk
    const outbox = database(OUTBOX, () => {});
    const [first, late] = [await makeDataKey(PRACTICE, PERSON), await makeDataKey(PRACTICE, OTHER_PERSON)];
    for (const wrap of [first, late, await wrapAgain(first, OTHER_PERSON)]) await putWrap(outbox, wrap);
    const kept = (await everything()).find(({ store }) => store === "keys")?.rows as { data_key: string }[];
    expect(kept.map(({ data_key }) => data_key)).toEqual([first.data_key, first.data_key]);
  });

  it("does not unwrap for another practice", async () => {
    const wrap = await makeDataKey(PRACTICE, PERSON);
    await expect(openDataKey({ ...wrap, practice: OTHER_PERSON })).rejects.toThrow();
  });
});
