/* What is typed about an animal, read: its day of birth from a year, a month or an age, and whether a microchip's number can be one.
   Pure. A number that cannot be one is a warning, never a reason to refuse: old chips and slips of a reader exist. */
import { parseNumber } from "../../contract/number";
import type { Patient1 as Patient } from "../../contract/wire_types";
import type { LetterParts, PatientCard } from "../../offline/journal";
import { DAY_MS } from "../../parts/figures";
import { patientOf } from "./animals";

const CHIP_DIGITS = 15;
/** ISO 11784: the last twelve digits are a number of 38 bits, the first three one of 10 bits. */
const NATIONAL_MOST = 2 ** 38 - 1;
const NATIONAL_DIGITS = 12;
/** ISO 11784 keeps this one for tests. */
const TEST_CODE = "999";

/** What is odd about a microchip's number, as the end of a word id; undefined when it can be one of ISO 11784. */
export function chipWarning(text: string): "length" | "range" | "test" | undefined {
  const digits = text.replace(/[\s.-]+/gu, "");
  if (!/^[0-9]+$/.test(digits) || digits.length !== CHIP_DIGITS) return "length";
  if (digits.startsWith(TEST_CODE)) return "test";
  return Number(digits.slice(-NATIONAL_DIGITS)) > NATIONAL_MOST ? "range" : undefined;
}

export type BirthAs = "born" | "years" | "months";

/** Animals older than this are a slip of the finger. */
const OLDEST_YEARS = 50;

/**
 * A day of birth, days since 1970-01-01, from a year ("2019"), a month ("3/2019", "2019-03"), or an age now.
 * What is not known of the day is taken from the middle, and never from after `now_ms`. undefined when it cannot be read.
 */
export function birthDay(as: BirthAs, text: string, now_ms: number): number | undefined {
  const read = as === "born" ? bornIn(text) : agedNow(as, text, now_ms);
  if (read === undefined) return undefined;
  const today = Math.floor(now_ms / DAY_MS);
  const isTold = read.first <= today && read.first > today - OLDEST_YEARS * 366;
  return isTold ? Math.min(read.middle, today) : undefined;
}

interface Span {
  first: number;
  middle: number;
}

const dayOfDate = (year: number, month: number, date: number): number => Date.UTC(year, month - 1, date) / DAY_MS;

function monthOf(text: string): { year: number; month: number } | undefined {
  const [, month, year] = /^(\d{1,2})\s*[./-]\s*(\d{4})$/.exec(text) ?? [];
  const [, isoYear, isoMonth] = /^(\d{4})-(\d{1,2})$/.exec(text) ?? [];
  const read = { year: Number(year ?? isoYear), month: Number(month ?? isoMonth) };
  return read.month >= 1 && read.month <= 12 ? read : undefined;
}

function bornIn(text: string): Span | undefined {
  const year = parseNumber(text);
  if ("value_tenths" in year && year.value_tenths >= 10_000) {
    const whole = year.value_tenths / 10;
    return { first: dayOfDate(whole, 1, 1), middle: dayOfDate(whole, 7, 1) };
  }
  const told = monthOf(text.trim());
  return told && { first: dayOfDate(told.year, told.month, 1), middle: dayOfDate(told.year, told.month, 15) };
}

function agedNow(as: "years" | "months", text: string, now_ms: number): Span | undefined {
  const age = parseNumber(text, { decimal: true });
  if ("code" in age) return undefined;
  const now = new Date(now_ms);
  const months = Math.round((age.value_tenths * (as === "years" ? 12 : 1)) / 10);
  const day = Math.floor(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() - months, now.getUTCDate()) / DAY_MS);
  return { first: day, middle: day };
}

/** From this age on months say more than is known. */
const YEARS_FROM_MONTHS = 24;

/** An age as a number and its unit, for a sentence: whole months, from two years on whole years. */
export function ageFacts(age_months: number): { unit: "months" | "years"; n: number } {
  return age_months < YEARS_FROM_MONTHS ? { unit: "months", n: age_months } : { unit: "years", n: Math.floor(age_months / 12) };
}

const IDENTITY = ["species", "name", "mark", "identifiers"] as const;

/** Whether this change makes it look like another animal: then a reason is asked. */
export function changesIdentity(before: Patient, after: Patient): boolean {
  return IDENTITY.some((key) => JSON.stringify(before[key] ?? null) !== JSON.stringify(after[key] ?? null));
}

/** The whole animal in its new wording: an amendment carries all of it. What is `undefined` or empty in `change` is left out. */
export function amended(card: PatientCard, change: { [Key in keyof Patient]?: Patient[Key] | undefined }, reason?: string): LetterParts {
  const told = Object.entries({ ...patientOf(card), ...change });
  const body = Object.fromEntries(told.filter(([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0)));
  return { kind: "patient", body, amends: card.id, ...(reason ? { reason } : {}) };
}
