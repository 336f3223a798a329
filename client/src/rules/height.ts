/*
 * Rule 6: the cuff against the heart.
 * It never replaces the raw value: the corrected mean stands beside it. A species without figures is never corrected.
 */
import type { HeightDocument } from "./documents.ts";
import type { Species } from "./measurement.ts";
import { chosen } from "./choices.ts";
import { halfUp, type Mean } from "./whole_numbers.ts";

export interface HeightCorrection {
  readonly correction_hundredths_mmhg: number;
  readonly corrected_mean_tenths_mmhg: number;
}

const DISTANCES = {
  /** Hydrostatics acts on the whole distance, not only on what exceeds the level range. */
  whole: (aboveHeartMm: number): number => aboveHeartMm,
};

/**
 * The correction in hundredths of mmHg, + when the cuff lies above the heart base (it then reads low).
 * Absent within the level range, and for a species that is never corrected.
 */
export function correctionHundredths(
  species: Species,
  aboveHeartMm: number,
  document: HeightDocument,
): number | undefined {
  const level = document.numbers.level_mm[species];
  const perMm = document.numbers.hundredths_mmhg_per_mm[species];
  if (level === undefined || perMm === undefined || Math.abs(aboveHeartMm) <= level) return undefined;
  return perMm * chosen(DISTANCES, document.choices.distance)(aboveHeartMm);
}

/** The exact corrected mean, as hundredths over n: (100·Σ + correction·n) / (100·n). */
export function correctedMean(mean: Mean, correction: number): Mean {
  return { sum: 100 * mean.sum + correction * mean.n, n: 100 * mean.n };
}

/** What is shown; absent when nothing was averaged or nothing is corrected. */
export function heightOf(
  species: Species,
  aboveHeartMm: number,
  mean: Mean | undefined,
  document: HeightDocument,
): HeightCorrection | undefined {
  const correction = correctionHundredths(species, aboveHeartMm, document);
  if (mean === undefined || correction === undefined) return undefined;
  const corrected = correctedMean(mean, correction);
  return {
    correction_hundredths_mmhg: correction,
    corrected_mean_tenths_mmhg: halfUp(corrected.sum * 10, corrected.n),
  };
}
