/*
 * Rule 8: what may be wrong with the result, and which way? One small claim for each caution, in the order shown.
 * A caution never blocks and never changes a number.
 */
import type { CautionsDocument } from "./documents.ts";
import type { Measurement } from "./measurement.ts";
import type { JudgedSet } from "./judged_set.ts";
import { halvesOf } from "./agreement.ts";
import { chosen } from "./choices.ts";
import { hasCloseTimes, hasShortGap } from "./gaps.ts";
import { isOutside } from "./standing.ts";
import { twiceMedian } from "./whole_numbers.ts";

export type Direction = "high" | "low" | "either";
export type Weight = "headline" | "minor";

export interface Caution {
  readonly key: string;
  readonly direction: Direction;
  readonly weight: Weight;
}

/** What a claim may look at: the measurement, its result set, the limits. */
interface Looked {
  readonly measurement: Measurement;
  readonly set: JudgedSet;
  readonly numbers: CautionsDocument["numbers"];
}

type Claim = (looked: Looked) => boolean;

function aboveHeartMm({ set }: Looked): number {
  return set.given.cuff_above_heart_mm ?? 0;
}

const DIRECTIONS: Readonly<Record<string, (looked: Looked) => Direction>> = {
  high: () => "high",
  low: () => "low",
  either: () => "either",
  /** A cuff below the heart reads too high, one above it too low. */
  by_height: (looked) => (aboveHeartMm(looked) < 0 ? "high" : "low"),
};

const WEIGHTS: Readonly<Record<string, Weight>> = { headline: "headline", minor: "minor" };

function isRestShort({ measurement, numbers }: Looked): boolean {
  return measurement.rest_s === undefined || measurement.rest_s < numbers.rest_short_s[measurement.species];
}

function isCuffUnknown({ set }: Looked): boolean {
  return set.given.limb_circumference_mm === undefined || set.given.cuff_width_mm === undefined;
}

function isOscillometricHigh({ set, numbers }: Looked): boolean {
  if (set.given.method !== "oscillometric" || set.mean === undefined) return false;
  return set.mean.sum >= numbers.oscillometric_high_mmhg * set.mean.n;
}

function isOscillometricSmall({ set, numbers }: Looked): boolean {
  const circumference = set.given.limb_circumference_mm;
  if (set.given.method !== "oscillometric" || circumference === undefined) return false;
  return circumference < numbers.oscillometric_small_mm;
}

function areManySetAside({ set, numbers }: Looked): boolean {
  const aside = set.given.readings.filter((reading) => reading.set_aside !== undefined).length;
  return aside * numbers.many_set_aside_one_in > set.given.readings.length;
}

/** All set-aside values on one side of the median of the eligible: the choice pulls the mean the other way. */
function isOneSided({ set, numbers }: Looked): boolean {
  if (set.eligible.length === 0) return false;
  const aside = set.given.readings.filter((reading) => reading.set_aside !== undefined);
  const values = aside.map((reading) => reading.systolic_mmhg).filter((value) => value !== undefined);
  if (values.length < numbers.one_sided_least) return false;
  const centre2 = twiceMedian(set.eligible.map((reading) => reading.systolic_mmhg));
  return values.every((value) => 2 * value > centre2) || values.every((value) => 2 * value < centre2);
}

function isRising({ measurement, set, numbers }: Looked): boolean {
  const { window } = set.agreement;
  if (window === undefined || measurement.rhythm === "irregular") return false;
  const { first, last } = halvesOf(window.map((reading) => reading.systolic_mmhg));
  return (last - first) * 1000 > numbers.rising_permille * first;
}

function doesPulseDiffer({ set, numbers }: Looked): boolean {
  const { bpm, permille } = numbers.pulse_differs;
  return set.averaged.some(({ pulse_bpm: machine, palpated_bpm: palpated }) => {
    if (machine === undefined || palpated === undefined) return false;
    const difference = Math.abs(machine - palpated);
    return difference > bpm && difference * 1000 > permille * palpated;
  });
}

function isGaugeValueOdd({ set, numbers }: Looked): boolean {
  if (set.given.gauge !== "aneroid") return false;
  return set.averaged.some((reading) => reading.systolic_mmhg % numbers.gauge_step_mmhg !== 0);
}

function isNotComparable({ measurement, set, numbers }: Looked): boolean {
  const previous = measurement.previous ?? {};
  const now = { ...set.given, place: measurement.place };
  const differs = (["method", "site", "posture", "instrument", "place"] as const).some(
    (key) => now[key] !== undefined && previous[key] !== undefined && now[key] !== previous[key],
  );
  return differs || doesCuffShareDiffer(set, previous.cuff_share_permille, numbers.cuff_share_differs_permille);
}

function doesCuffShareDiffer(set: JudgedSet, before: number | undefined, limitPermille: number): boolean {
  if (before === undefined || set.cuff === undefined) return false;
  return Math.abs(set.cuff.share_permille - before) > limitPermille;
}

function isGapUnknown({ set, numbers }: Looked): boolean {
  return hasCloseTimes(set.given.readings, numbers.gap_unknown.readings, numbers.gap_unknown.within_s);
}

/** Times typed in afterwards say nothing about the gaps, so `gap_unknown` stands instead. */
function isGapShort(looked: Looked): boolean {
  return !isGapUnknown(looked) && hasShortGap(looked.set.given.readings, looked.numbers.gap_short_s);
}

/** Every caution in the order shown; the document says which way it points and how much it weighs. */
const CLAIMS: readonly (readonly [string, Claim])[] = [
  ["rest_short", isRestShort],
  ["tense", ({ measurement }) => measurement.demeanour === "tense"],
  ["fighting", ({ measurement }) => measurement.demeanour === "fighting"],
  ["calmed", ({ measurement }) => measurement.state === "calmed"],
  ["cuff_narrow", ({ set }) => set.cuff !== undefined && set.cuff.fit !== "good" && set.cuff.expect === "reads_high"],
  ["cuff_wide", ({ set }) => set.cuff !== undefined && set.cuff.fit !== "good" && set.cuff.expect === "reads_low"],
  ["cuff_unknown", isCuffUnknown],
  ["height_off", (looked) => Math.abs(aboveHeartMm(looked)) >= looked.numbers.height_off_mm],
  ["irregular_rhythm", ({ measurement }) => measurement.rhythm === "irregular"],
  ["oscillometric_high", isOscillometricHigh],
  ["oscillometric_small", isOscillometricSmall],
  ["many_set_aside", areManySetAside],
  ["one_sided", isOneSided],
  ["rising", isRising],
  ["pulse_differs", doesPulseDiffer],
  ["sitting_up", ({ set }) => set.given.posture === "sitting"],
  ["gap_short", isGapShort],
  ["gap_unknown", isGapUnknown],
  ["odd_gauge_value", isGaugeValueOdd],
  ["not_comparable", isNotComparable],
  ["unlikely_confirmed", ({ set, numbers }) => set.averaged.some((reading) => isOutside(reading, numbers.likely_mmhg))],
];

/** The cautions of the result set, in order; none: an empty list. */
export function cautionsOf(measurement: Measurement, set: JudgedSet, document: CautionsDocument): readonly Caution[] {
  const looked = { measurement, set, numbers: document.numbers };
  return CLAIMS.filter(([, applies]) => applies(looked)).map(([key]) => ({
    key,
    direction: chosen(DIRECTIONS, document.choices.direction[key])(looked),
    weight: chosen(WEIGHTS, document.choices.weight[key]),
  }));
}

/** Is there a caution that can change the category by itself? */
export function hasHeadline(cautions: readonly Caution[]): boolean {
  return cautions.some((caution) => caution.weight === "headline");
}

/** The direction all headline cautions share, else `either`; absent without one. */
export function leaningOf(cautions: readonly Caution[]): Direction | undefined {
  const directions = cautions.filter((caution) => caution.weight === "headline").map((caution) => caution.direction);
  if (directions.length === 0) return undefined;
  return directions.every((direction) => direction === directions[0]) ? directions[0] : "either";
}
