/* Numbers as text, before they reach a sentence: whole numbers in, text of the reader's language out.
   Must not round twice: what comes in was rounded by the rules. */

const WHOLE_OR_TENTH = new Intl.NumberFormat(undefined, { maximumFractionDigits: 1, useGrouping: false });
const HUNDREDTHS = new Intl.NumberFormat(undefined, { maximumFractionDigits: 2, useGrouping: false });
const PERCENT = new Intl.NumberFormat(undefined, { style: "percent", maximumFractionDigits: 1 });
const DAY_AND_TIME = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit" });
const TO_THE_SECOND = new Intl.DateTimeFormat(undefined, {
  day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit", second: "2-digit",
});
const TIME = new Intl.DateTimeFormat(undefined, { hour: "2-digit", minute: "2-digit" });
const TIME_EXACT = new Intl.DateTimeFormat(undefined, { hour: "2-digit", minute: "2-digit", second: "2-digit" });
const DAY = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" });
/** A day, ms. */
export const DAY_MS = 86_400_000;

/** 1404 tenths as 140.4, 1400 as 140. */
export function tenths(value: number): string {
  return WHOLE_OR_TENTH.format(value / 10);
}

/** 80 hundredths as 0.8. */
export function hundredths(value: number): string {
  return HUNDREDTHS.format(value / 100);
}

/** 385 ‰ as 38.5 %. */
export function permille(value: number): string {
  return PERCENT.format(value / 1000);
}

/** Millimetres as centimetres: 130 as 13. */
export function cm(value_mm: number): string {
  return tenths(value_mm);
}

/** An instant with its month as a word. */
export function dayAndTime(at_ms: number): string {
  return DAY_AND_TIME.format(at_ms);
}

/** An instant with its month as a word and its seconds. */
export function dayAndTimeToTheSecond(at_ms: number): string {
  return TO_THE_SECOND.format(at_ms);
}

/** An instant as the time of its day. */
export function timeOfDay(at_ms: number): string {
  return TIME.format(at_ms);
}

/** An instant as the time of its day, with its seconds. */
export function timeToTheSecond(at_ms: number): string {
  return TIME_EXACT.format(at_ms);
}

/** A calendar day, given as days since 1970-01-01, with its month as a word. */
export function dayOnly(day: number): string {
  return DAY.format(day * DAY_MS);
}
