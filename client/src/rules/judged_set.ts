/*
 * One set on its way through the rules: the set as given, and what rules 1 to 6 found for it.
 * It holds no rule; category and cautions read from it, assess fills it.
 */
import type { Agreement } from "./agreement.ts";
import type { Averages } from "./averaging.ts";
import type { Bounds } from "./bounds.ts";
import type { CuffFit } from "./cuff.ts";
import type { HeightCorrection } from "./height.ts";
import type { MeasurementSet } from "./measurement.ts";
import type { NumberedReading, Standing } from "./standing.ts";
import type { Mean } from "./whole_numbers.ts";

export interface JudgedSet {
  readonly given: MeasurementSet;
  readonly cuff?: CuffFit;
  readonly standings: readonly Standing[];
  readonly eligible: readonly NumberedReading[];
  readonly agreement: Agreement;
  /** The window, or without one all eligible readings. */
  readonly averaged: readonly NumberedReading[];
  readonly averages: Averages;
  /** Exact systolic mean of the averaged readings; absent when nothing is eligible. */
  readonly mean?: Mean;
  readonly bounds?: Bounds;
  readonly height?: HeightCorrection;
  /** Exact corrected systolic mean, where there is a correction. */
  readonly corrected?: Mean;
}
