/**
 * Makes ids that two phones never make twice: UUIDv7 (RFC 9562), so that rows sort by making.
 * Nobody may take the time in an id for the truth: it is what this phone's clock said.
 */

import { toHex } from "./hex.ts";

/**
 * A new UUIDv7, lower case.
 * @param nowMs ms UTC by the phone's clock
 */
export function newId(nowMs: number = Date.now()): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const view = new DataView(bytes.buffer);
  view.setUint16(0, Math.floor(nowMs / 2 ** 32));
  view.setUint32(2, nowMs % 2 ** 32);
  view.setUint8(6, (view.getUint8(6) & 0x0f) | 0x70);
  view.setUint8(8, (view.getUint8(8) & 0x3f) | 0x80);
  const hex = toHex(bytes);
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/** True for any UUID in lower case, whatever its version. */
export function isId(text: string): boolean {
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(text);
}

/** The making time inside a UUIDv7 of our own, ms UTC. Only good for a rough "since when" on the phone that made it. */
export function madeAtMs(id: string): number {
  return Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
}
