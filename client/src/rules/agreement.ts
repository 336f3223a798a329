/*
 * Rule 3: do the readings of one set agree, which of them form the window, and what is advised?
 * It never drops a reading: it names suspects, a person decides.
 */
import type { AgreementDocument } from "./documents.ts";
import type { Reading } from "./measurement.ts";
import type { NumberedReading } from "./standing.ts";
import { chosen } from "./choices.ts";
import { isAboveGauge } from "./standing.ts";
import { floorDivide, rangeOf, sumOf, twiceMedian, type Mean } from "./whole_numbers.ts";

export type Verdict = "steady" | "too_few" | "scattered" | "falling";
export type Advice = "enough" | "stop_today" | "go_on" | "second_look";

export interface Agreement {
  readonly verdict: Verdict;
  /** The readings that are averaged; only with verdict `steady`. */
  readonly window?: readonly NumberedReading[];
  readonly readings_needed?: number;
  readonly suspects?: readonly string[];
}

const WINDOWS = { latest_consecutive: longestPassingWindow };
const CENTRES = { median: twiceMedian };

/** The last `count` of a list, fewer where there are no more. */
function latest<T>(values: readonly T[], count: number): readonly T[] {
  return values.slice(Math.max(0, values.length - count));
}

function systolicsOf(readings: readonly NumberedReading[]): readonly number[] {
  return readings.map((reading) => reading.systolic_mmhg);
}

/** Sums of the first and the last h = w div 2 values, the middle one of an odd count in neither. */
export function halvesOf(values: readonly number[]): { first: number; last: number; h: number } {
  const h = floorDivide(values.length, 2);
  return { first: sumOf(values.slice(0, h)), last: sumOf(values.slice(values.length - h)), h };
}

/** (max − min) / mean at most the limit, cross-multiplied. */
function isEven(values: readonly number[], document: AgreementDocument): boolean {
  return rangeOf(values) * values.length * 1000 <= document.numbers.even_permille * sumOf(values);
}

/** The mean of the first half above that of the last by more than both limits of the document. */
function isFalling(values: readonly number[], document: AgreementDocument): boolean {
  const { first, last, h } = halvesOf(values);
  const { mmhg, permille } = document.numbers.fall;
  const isSmall = first - last <= mmhg * h;
  const isSmallShare = (first - last) * values.length * 1000 <= permille * sumOf(values) * h;
  return !isSmall && !isSmallShare;
}

function longestPassingWindow(
  looked: readonly NumberedReading[],
  document: AgreementDocument,
): readonly NumberedReading[] | undefined {
  const { least, most } = document.numbers.window;
  let window: readonly NumberedReading[] | undefined;
  for (let count = least; count <= Math.min(most, looked.length); count += 1) {
    const tried = latest(looked, count);
    const values = systolicsOf(tried);
    if (!isEven(values, document) || isFalling(values, document)) break;
    window = tried;
  }
  return window;
}

/**
 * Ids of the readings far from the median. Everything is doubled or fourfold, since a median of an even count has
 * a half: |x − median| > mmhg is d2 > 2·mmhg, and |x − median| · 1000 > permille · MAD is 2000·d2 > permille·mad4.
 */
function suspectsOf(looked: readonly NumberedReading[], document: AgreementDocument): readonly string[] {
  const { of_latest, mmhg, mad_permille } = document.numbers.suspect;
  const twiceCentre = chosen(CENTRES, document.choices.centre);
  const values = systolicsOf(latest(looked, of_latest));
  const centre2 = twiceCentre(values);
  const mad4 = twiceCentre(values.map((value) => Math.abs(2 * value - centre2)));
  const isFar = (value: number): boolean => {
    const distance2 = Math.abs(2 * value - centre2);
    return distance2 > 2 * mmhg && 2 * distance2 * 1000 > mad_permille * mad4;
  };
  return latest(looked, document.numbers.window.least)
    .filter((reading) => isFar(reading.systolic_mmhg))
    .map((reading) => reading.id);
}

/** The eligible readings after the latest attempt above the gauge: such an attempt cannot be averaged away. */
function lookedAt(readings: readonly Reading[], eligible: readonly NumberedReading[]): readonly NumberedReading[] {
  const after = new Set(readings.slice(readings.findLastIndex(isAboveGauge) + 1));
  return eligible.filter((reading) => after.has(reading));
}

function agreementWhenIrregular(looked: readonly NumberedReading[], document: AgreementDocument): Agreement {
  const { least, most } = document.numbers.irregular_window;
  if (looked.length < least) return { verdict: "too_few", readings_needed: least - looked.length };
  return { verdict: "steady", window: latest(looked, most) };
}

function agreementWithoutWindow(looked: readonly NumberedReading[], document: AgreementDocument): Agreement {
  const values = systolicsOf(latest(looked, document.numbers.window.least));
  const suspects = suspectsOf(looked, document);
  if (!isEven(values, document) && suspects.length > 0) return { verdict: "scattered", suspects };
  if (isFalling(values, document)) return { verdict: "falling" };
  return suspects.length > 0 ? { verdict: "scattered", suspects } : { verdict: "scattered" };
}

/** What the readings of one set say together. `eligible` are those of `readings` that rule 2 lets through. */
export function agreementOf(
  readings: readonly Reading[],
  eligible: readonly NumberedReading[],
  isIrregular: boolean,
  document: AgreementDocument,
): Agreement {
  const looked = lookedAt(readings, eligible);
  if (isIrregular) return agreementWhenIrregular(looked, document);
  const needed = document.numbers.window.least - looked.length;
  if (needed > 0) return { verdict: "too_few", readings_needed: needed };
  const window = chosen(WINDOWS, document.choices.window)(looked, document);
  return window ? { verdict: "steady", window } : agreementWithoutWindow(looked, document);
}

/** Do two successive eligible readings lie `seconds` or more apart, both times known? */
function hasPauseOf(seconds: number, eligible: readonly NumberedReading[]): boolean {
  return eligible.some((reading, index) => {
    const before = index === 0 ? undefined : eligible[index - 1].taken_s;
    if (before === undefined || reading.taken_s === undefined) return false;
    return Math.abs(reading.taken_s - before) >= seconds;
  });
}

/** Advice for a result set without a window: its bounds decide first, then how often the cuff was pumped up. */
export function adviceWithoutWindow(
  readings: readonly Reading[],
  eligible: readonly NumberedReading[],
  boundsDecide: boolean,
  document: AgreementDocument,
): Advice {
  if (boundsDecide) return "enough";
  const inflations = eligible.length + readings.filter(isAboveGauge).length;
  return inflations >= document.numbers.stop_today_readings ? "stop_today" : "go_on";
}

/** Advice for a result set with a category, from its exact raw mean; absent when there is nothing to advise. */
export function adviceWithCategory(
  mean: Mean,
  eligible: readonly NumberedReading[],
  restS: number | undefined,
  document: AgreementDocument,
): Advice | undefined {
  const { from_mmhg, rest_s } = document.numbers.second_look;
  if (mean.sum < from_mmhg * mean.n) return undefined;
  const rested = restS !== undefined && restS >= rest_s;
  return rested || hasPauseOf(rest_s, eligible) ? undefined : "second_look";
}
