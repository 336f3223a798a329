/**
 * Seals what goes to the phone's disk and opens it again: AES-GCM with 256 bits and a fresh 96-bit iv each time.
 * The store and the key of the row are bound in, so that a box moved to another row does not open.
 * Nothing typed may reach IndexedDB past this file: overwritten plain text stays in the browser's own files.
 */

/** `bytes` sealed under the data key named by `key`. The layout is frozen. */
export interface Box {
  readonly key: string;
  readonly box: "phone.1";
  readonly iv: Uint8Array<ArrayBuffer>;
  readonly bytes: ArrayBuffer;
}

/** One per phone and practice. `secret` cannot be read out, only used. */
export interface DataKey {
  readonly id: string;
  readonly practice: string;
  readonly secret: CryptoKey;
}

const IV_BYTES = 12;

/** @param store @param row where the box will lie; opening it needs the same two words */
export async function sealBytes(
  key: DataKey,
  store: string,
  row: string,
  plain: Uint8Array<ArrayBuffer>,
): Promise<Box> {
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const bytes = await crypto.subtle.encrypt(howSealed(iv, store, row), key.secret, plain);
  return { key: key.id, box: "phone.1", iv, bytes };
}

/** Rejects when the key is another one, the row is another one, or a bit was changed. */
export async function openBytes(key: DataKey, store: string, row: string, box: Box): Promise<Uint8Array<ArrayBuffer>> {
  if (box.box !== "phone.1" || box.key !== key.id) throw new Error("this box belongs to another key");
  return new Uint8Array(await crypto.subtle.decrypt(howSealed(box.iv, store, row), key.secret, box.bytes));
}

/** Seals plain JSON. */
export function seal(key: DataKey, store: string, row: string, value: unknown): Promise<Box> {
  return sealBytes(key, store, row, new TextEncoder().encode(JSON.stringify(value)));
}

/** Opens plain JSON; rejects like `openBytes`. */
export async function open(key: DataKey, store: string, row: string, box: Box): Promise<unknown> {
  return JSON.parse(new TextDecoder().decode(await openBytes(key, store, row, box)));
}

function howSealed(iv: Uint8Array<ArrayBuffer>, store: string, row: string): AesGcmParams {
  return { name: "AES-GCM", iv, additionalData: new TextEncoder().encode(`${store}\u0000${row}`) };
}
