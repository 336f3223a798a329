/**
 * The bundle as bytes: one header line, then two lines an entry, envelope and letter (NDJSON).
 * Pure. A letter's line is passed on as the bytes it came in, never parsed and printed again.
 */
import { check } from "../contract/wire.ts";

/** One own entry on its way out. */
export interface Outgoing {
  readonly number: number;
  readonly id: string;
  readonly sha: string;
  readonly tries: number;
  readonly letter: Uint8Array<ArrayBuffer>;
}

/** envelope.1 as pulled. */
export interface Envelope {
  readonly device: string;
  readonly number: number;
  readonly sha: string;
  readonly position: number;
  readonly after: number;
  readonly chain: string;
  readonly received_at_ms?: number;
  readonly flags?: readonly string[];
  readonly assessment?: object;
}

export interface PulledEntry {
  readonly envelope: Envelope;
  readonly letter: Uint8Array<ArrayBuffer>;
}

/** A page of a pull whose form is right; whether it fits what came before is for `chain.ts`. */
export interface Page {
  readonly epoch: string;
  readonly more: boolean;
  readonly serverTimeMs?: number;
  readonly entries: readonly PulledEntry[];
}

/** What header and envelope of one entry may add to its letter, bytes; kept generous. */
export const FRAME_BYTES = 260;

const NEWLINE = 10;

/** The bytes of a hand-in, ending in a newline. */
export function writeBundle(practice: string, device: string, entries: readonly Outgoing[]): Uint8Array<ArrayBuffer> {
  const encoder = new TextEncoder();
  const lines = [encoder.encode(JSON.stringify({ bundle: 1, practice, device, count: entries.length }))];
  for (const { number, sha, letter } of entries) {
    lines.push(encoder.encode(JSON.stringify({ device, number, sha })), letter);
  }
  const bytes = new Uint8Array(lines.reduce((sum, line) => sum + line.length + 1, 0));
  let at = 0;
  for (const line of lines) {
    bytes.set(line, at);
    bytes[at + line.length] = NEWLINE;
    at += line.length + 1;
  }
  return bytes;
}

/** undefined when anything in it is not as it should be: cut off, wrong count, wrong form. */
export function readPage(bytes: Uint8Array<ArrayBuffer>, practice: string): Page | undefined {
  const lines = splitLines(bytes);
  const header = readLine("bundle.1", lines[0]);
  if (header === undefined || typeof header["epoch"] !== "string") return undefined;
  if (header["practice"] !== undefined && header["practice"] !== practice) return undefined;
  const count = header["count"] as number;
  const more = header["more"] === true;
  if (lines.length !== 1 + 2 * count || (more && count === 0)) return undefined;
  const entries = pairs(lines.slice(1));
  if (entries === undefined) return undefined;
  const time = header["server_time_ms"];
  return { epoch: header["epoch"], more, entries, ...(typeof time === "number" ? { serverTimeMs: time } : {}) };
}

function pairs(lines: readonly Uint8Array<ArrayBuffer>[]): PulledEntry[] | undefined {
  const entries: PulledEntry[] = [];
  for (let at = 0; at < lines.length; at += 2) {
    const envelope = readLine("envelope.1", lines[at]);
    const letter = lines[at + 1];
    if (envelope === undefined || letter === undefined) return undefined;
    if (["position", "after", "chain"].some((name) => envelope[name] === undefined)) return undefined;
    entries.push({ envelope: envelope as unknown as Envelope, letter });
  }
  return entries;
}

/** A line read as JSON and checked against a wire document; undefined when either fails. */
export function readLine(schema: string, line: Uint8Array | undefined): Record<string, unknown> | undefined {
  if (line === undefined) return undefined;
  try {
    const value: unknown = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(line));
    return check(schema, value) ? undefined : (value as Record<string, unknown>);
  } catch {
    return undefined;
  }
}

/** The lines of NDJSON; the newline at the very end begins no line. */
export function splitLines(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer>[] {
  const lines: Uint8Array<ArrayBuffer>[] = [];
  let from = 0;
  for (let at = bytes.indexOf(NEWLINE); at !== -1; at = bytes.indexOf(NEWLINE, from)) {
    lines.push(bytes.subarray(from, at));
    from = at + 1;
  }
  if (from < bytes.length) lines.push(bytes.subarray(from));
  return lines;
}
