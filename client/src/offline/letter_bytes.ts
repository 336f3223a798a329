/**
 * Makes a letter: the exact bytes its author states, once. They are never parsed and printed again to pass them on.
 * Refuses here, where the person can still mend it, what the server would refuse for good.
 */
import { check, checkMeasurement } from "../contract/wire.ts";
import { toHex } from "./hex.ts";
import type { Letter, LetterParts } from "./phone_types.ts";
import { PhoneTrouble } from "./trouble.ts";

/** The server takes no larger entry. */
export const MOST_LETTER_BYTES = 32 * 1024;

/** What the phone adds to the author's own words. */
export interface Circumstances {
  readonly id: string;
  readonly author: string;
  /** Highest position of the record this phone had seen. */
  readonly basis: number;
  readonly nowMs: number;
  /** Server minus phone at last contact, where known. */
  readonly clockOffsetMs?: number;
}

export interface MadeLetter {
  readonly letter: Letter;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sha: string;
}

/** @throws PhoneTrouble `not_valid` with path and why, `too_large`; nothing was written then */
export async function makeLetter(parts: LetterParts, around: Circumstances): Promise<MadeLetter> {
  const letter = letterOf(parts, around);
  refuseUnfit(letter);
  const text = JSON.stringify(letter, refuseHalfCharacters);
  const bytes = new TextEncoder().encode(text);
  if (bytes.length > MOST_LETTER_BYTES) throw new PhoneTrouble("too_large");
  // The letter handed back is read from the bytes, so that what the screen shows is what was filed.
  return { letter: JSON.parse(text) as Letter, bytes, sha: toHex(await sha256(bytes)) };
}

function letterOf(parts: LetterParts, around: Circumstances): Letter {
  const { kind, body, amends, reason, rules, assessment } = parts;
  const at = new Date(around.nowMs);
  return {
    id: around.id,
    kind,
    schema: 1,
    author: around.author,
    basis: around.basis,
    made_at_ms: around.nowMs,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    offset_min: 0 - at.getTimezoneOffset(), // "0 -" because -0 is no whole number to JSON's readers
    ...(around.clockOffsetMs === undefined ? {} : { clock_offset_ms: around.clockOffsetMs }),
    ...(amends === undefined ? {} : { amends }),
    ...(reason === undefined ? {} : { reason }),
    ...(rules === undefined ? {} : { rules }),
    ...(assessment === undefined ? {} : { assessment }),
    body: body as Letter["body"],
  };
}

function refuseUnfit(letter: Letter): void {
  const outside = check("letter.1", letter);
  if (outside) throw new PhoneTrouble("not_valid", outside.path, outside.why);
  const inside = letter.kind === "measurement" ? checkMeasurement(letter.body) : check(`${letter.kind}.1`, letter.body);
  if (inside) throw new PhoneTrouble("not_valid", `/body${inside.path}`, inside.why);
  const isNamed = letter.kind !== "measurement" || letter.body["patient"] !== undefined;
  if (!isNamed) throw new PhoneTrouble("not_valid", "/body/patient", "missing");
}

/** Half a character (a lone surrogate, say from a cut emoji) has no UTF-8 and the server refuses it. */
function refuseHalfCharacters(_name: string, value: unknown): unknown {
  if (typeof value === "string" && /\p{Surrogate}/u.test(value)) throw new PhoneTrouble("not_valid", "", "wrong_form");
  return value;
}

export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
}
