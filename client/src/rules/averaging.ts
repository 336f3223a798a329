/*
 * Rule 4: the averages over the window, or without one over all eligible readings of the set.
 * It must not decide which readings these are, and must not round before the end.
 */
import type { AveragingDocument } from "./documents.ts";
import type { Reading } from "./measurement.ts";
import { chosen } from "./choices.ts";
import { halfUp, integerSquareRoot, meanOf, rangeOf, sumOf } from "./whole_numbers.ts";

export interface Average {
  readonly n: number;
  readonly mean_tenths_mmhg: number;
  readonly sd_tenths_mmhg?: number;
  readonly spread_permille?: number;
  readonly ci95_half_width_tenths_mmhg?: number;
}

export interface PulseAverage {
  readonly n: number;
  readonly mean_tenths_bpm: number;
}

export interface Averages {
  readonly systolic?: Average;
  readonly mean?: Average;
  readonly diastolic?: Average;
  readonly pulse?: PulseAverage;
}

const SPREADS = {
  range_over_mean: (values: readonly number[]): number =>
    halfUp(rangeOf(values) * values.length * 1000, sumOf(values)),
};

/** n·Σx² − (Σx)², which is n·(n − 1) times the variance. */
function scaledVariance(values: readonly number[]): bigint {
  const sum = BigInt(sumOf(values));
  const squares = BigInt(sumOf(values.map((value) => value * value)));
  return BigInt(values.length) * squares - sum * sum;
}

/** Rounds √(num/den) / 2 half up: num/den is (2·result)², so that half a step is a whole number. */
function halfRoot(num: bigint, den: bigint): number {
  return Number((integerSquareRoot(num / den) + 1n) / 2n);
}

/** Standard deviation in tenths; 400 = 20², two for the rounding and ten for the tenths. */
function sdTenths(values: readonly number[]): number {
  const n = BigInt(values.length);
  return halfRoot(400n * scaledVariance(values), n * (n - 1n));
}

/** Half width of the 95 % interval in tenths; t in thousandths, hence 10⁶ below. BigInt: it passes 2^53. */
function halfWidthTenths(values: readonly number[], tThousandths: number): number {
  const n = BigInt(values.length);
  const t = BigInt(tThousandths);
  return halfRoot(400n * scaledVariance(values) * t * t, n * (n - 1n) * n * 1000n * 1000n);
}

/** One average; nothing recorded: absent. The interval only over a window and for the counts the table holds. */
function averageOf(values: readonly number[], hasWindow: boolean, document: AveragingDocument): Average | undefined {
  if (values.length === 0) return undefined;
  const { sum, n } = meanOf(values);
  const average = { n, mean_tenths_mmhg: halfUp(sum * 10, n) };
  if (n < 2) return average;
  const spread = {
    sd_tenths_mmhg: sdTenths(values),
    spread_permille: chosen(SPREADS, document.choices.spread)(values),
  };
  const { from_n, t_thousandths } = document.numbers.interval;
  const t = hasWindow ? t_thousandths[n - from_n] : undefined;
  if (t === undefined) return { ...average, ...spread };
  return { ...average, ...spread, ci95_half_width_tenths_mmhg: halfWidthTenths(values, t) };
}

function recorded(
  readings: readonly Reading[],
  key: "systolic_mmhg" | "mean_mmhg" | "diastolic_mmhg" | "pulse_bpm",
): readonly number[] {
  return readings.map((reading) => reading[key]).filter((value) => value !== undefined);
}

function pulseOf(values: readonly number[]): PulseAverage | undefined {
  if (values.length === 0) return undefined;
  const { sum, n } = meanOf(values);
  return { n, mean_tenths_bpm: halfUp(sum * 10, n) };
}

/** All averages of the readings given; each present only when one of them carries the value. */
export function averagesOf(readings: readonly Reading[], hasWindow: boolean, document: AveragingDocument): Averages {
  const systolic = averageOf(recorded(readings, "systolic_mmhg"), hasWindow, document);
  const mean = averageOf(recorded(readings, "mean_mmhg"), hasWindow, document);
  const diastolic = averageOf(recorded(readings, "diastolic_mmhg"), hasWindow, document);
  const pulse = pulseOf(recorded(readings, "pulse_bpm"));
  return {
    ...(systolic && { systolic }),
    ...(mean && { mean }),
    ...(diastolic && { diastolic }),
    ...(pulse && { pulse }),
  };
}
