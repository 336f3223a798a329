/*
 * Rule 2: what does each reading count for, before agreement is looked at?
 * It never removes a reading by arithmetic: only a person sets one aside, and can undo it.
 */
import type { PressureLimits, StandingDocument } from "./documents.ts";
import type { Reading } from "./measurement.ts";
import { chosen } from "./choices.ts";
import { isWithin } from "./whole_numbers.ts";

/** `eligible` readings end as counted, earlier or provisional, once agreement has found a window or none. */
export type Standing = "by_hand" | "no_number" | "impossible" | "first" | "eligible";

/** A reading that carries a systolic value and may be averaged. */
export type NumberedReading = Reading & { readonly systolic_mmhg: number };

const ORDERS = {
  /** Equal values break the order; without a mean, systolic is tested against diastolic. */
  systolic_above_mean_above_diastolic: (reading: Reading): boolean => {
    const present = [reading.systolic_mmhg, reading.mean_mmhg, reading.diastolic_mmhg].filter(
      (value) => value !== undefined,
    );
    return present.every((value, index) => index === 0 || present[index - 1] > value);
  },
};

/** Does a pressure of the reading lie outside its limits? A value that was not recorded cannot. */
export function isOutside(reading: Reading, limits: PressureLimits): boolean {
  const outside = (value: number | undefined, [lowest, highest]: readonly number[]): boolean =>
    value !== undefined && !isWithin(value, [lowest, highest]);
  return (
    outside(reading.systolic_mmhg, limits.systolic) ||
    outside(reading.mean_mmhg, limits.mean) ||
    outside(reading.diastolic_mmhg, limits.diastolic)
  );
}

function standingOf(reading: Reading, position: number, document: StandingDocument): Standing {
  if (reading.set_aside !== undefined) return "by_hand";
  if (reading.beyond !== undefined) return "no_number";
  if (isOutside(reading, document.numbers.possible_mmhg)) return "impossible";
  if (!chosen(ORDERS, document.choices.order)(reading)) return "impossible";
  return position <= document.numbers.first_not_counted ? "first" : "eligible";
}

/** The standing of every reading of one set, in order; positions count from 1, whatever became of the reading. */
export function standingsOf(readings: readonly Reading[], document: StandingDocument): readonly Standing[] {
  return readings.map((reading, index) => standingOf(reading, index + 1, document));
}

/** The eligible readings of a set, in the order taken. */
export function eligibleOf(readings: readonly Reading[], standings: readonly Standing[]): readonly NumberedReading[] {
  return readings.filter((_, index) => standings[index] === "eligible") as readonly NumberedReading[];
}

/** An attempt above the end of the gauge that nobody set aside. */
export function isAboveGauge(reading: Reading): boolean {
  return reading.beyond === "above_gauge" && reading.set_aside === undefined;
}
