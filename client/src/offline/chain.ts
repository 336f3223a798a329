/**
 * Does a pulled page fit exactly behind what this phone already holds?
 * Pure. Each entry names the one before it, carries its own fingerprint and the chain of all before: a gap, a changed
 * letter or a record that is not the one read so far shows here, before a row is kept.
 */
import type { PulledEntry } from "./bundle.ts";
import { fromHex, toHex } from "./hex.ts";

/** How far this phone has read in one epoch. `chain` is the chain of the last entry, hex. */
export interface Place {
  readonly epoch: string;
  readonly position: number;
  readonly chain: string;
}

export type Digest = (bytes: Uint8Array<ArrayBuffer>) => Promise<Uint8Array<ArrayBuffer>>;

/** The chain before the first entry: 32 zero bytes. */
export const NO_CHAIN = "0".repeat(64);

/** The beginning of a record. */
export function beginning(epoch: string): Place {
  return { epoch, position: 0, chain: NO_CHAIN };
}

/** The place behind the page, or undefined when one entry does not fit. */
export async function follow(from: Place, entries: readonly PulledEntry[], sha256: Digest): Promise<Place | undefined> {
  let place = from;
  for (const { envelope, letter } of entries) {
    if (envelope.after !== place.position || envelope.position <= place.position) return undefined;
    const sha = await sha256(letter);
    if (toHex(sha) !== envelope.sha) return undefined;
    const chain = toHex(await sha256(joined(fromHex(place.chain), sha)));
    if (chain !== envelope.chain) return undefined;
    place = { epoch: from.epoch, position: envelope.position, chain };
  }
  return place;
}

function joined(before: Uint8Array, sha: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(before.length + sha.length);
  both.set(before);
  both.set(sha, before.length);
  return both;
}
