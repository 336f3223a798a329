/**
 * Makes, wraps and unwraps the data key of a practice on this phone.
 * The wrapping key is non-extractable and lives in IndexedDB (`wrap: phone`): a copied file of the store opens only
 * together with the browser's own key files. It is no lock against somebody holding the unlocked phone.
 */
import type { DataKey } from "./boxes.ts";
import type { WrapRow } from "./rows.ts";
import { newId } from "./ids.ts";

const AES_256 = { name: "AES-GCM", length: 256 };

/** A new data key, already wrapped for one person. */
export async function makeDataKey(practice: string, person: string): Promise<WrapRow> {
  const secret = await crypto.subtle.generateKey(AES_256, true, ["encrypt", "decrypt"]);
  return wrapFor(person, practice, newId(), secret);
}

/** Wraps the data key that `row` holds once more, for another person of the same practice. */
export async function wrapAgain(row: WrapRow, person: string): Promise<WrapRow> {
  return wrapFor(person, row.practice, row.data_key, await unwrap(row, true));
}

/** Rejects when the row was changed or its wrapping key does not fit. */
export async function openDataKey(row: WrapRow): Promise<DataKey> {
  return { id: row.data_key, practice: row.practice, secret: await unwrap(row, false) };
}

async function wrapFor(person: string, practice: string, dataKey: string, secret: CryptoKey): Promise<WrapRow> {
  const key = await crypto.subtle.generateKey(AES_256, false, ["wrapKey", "unwrapKey"]);
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const wrapped = await crypto.subtle.wrapKey("raw", secret, key, howWrapped(iv, practice, dataKey));
  return { practice, person, kind: "phone", data_key: dataKey, key, wrapped, iv };
}

function unwrap(row: WrapRow, extractable: boolean): Promise<CryptoKey> {
  const how = howWrapped(row.iv, row.practice, row.data_key);
  return crypto.subtle.unwrapKey("raw", row.wrapped, row.key, how, AES_256, extractable, ["encrypt", "decrypt"]);
}

function howWrapped(iv: Uint8Array<ArrayBuffer>, practice: string, dataKey: string): AesGcmParams {
  return { name: "AES-GCM", iv, additionalData: new TextEncoder().encode(`keys\u0000${practice}\u0000${dataKey}`) };
}
