/*
 * Rule 5: what can be said about a set that has no average to stand on?
 * It must not be asked for a set with a window, and never turns an attempt above the gauge into a number.
 */
import type { BoundsDocument } from "./documents.ts";
import type { Reading } from "./measurement.ts";
import type { Standing } from "./standing.ts";
import { chosen } from "./choices.ts";
import { isAboveGauge } from "./standing.ts";

export interface Bounds {
  readonly at_least_mmhg?: number;
  readonly below_mmhg?: number;
}

/** How a reading above the gauge compares with an edge. */
interface AboveGauge {
  readonly reaches: boolean;
  readonly staysBelow: boolean;
}

const ABOVE_GAUGE: Readonly<Record<string, AboveGauge>> = {
  higher_than_any_number: { reaches: true, staysBelow: false },
};

/** The eligible readings and the attempts above the gauge that nobody set aside, in order; position 1 too. */
function boundingReadings(readings: readonly Reading[], standings: readonly Standing[]): readonly Reading[] {
  return readings.filter((reading, index) => standings[index] === "eligible" || isAboveGauge(reading));
}

/** The bounds of a set without a window; absent with too few readings, or when they bound nothing. */
export function boundsOf(
  readings: readonly Reading[],
  standings: readonly Standing[],
  document: BoundsDocument,
): Bounds | undefined {
  const { least_readings, of_latest, at_least_mmhg, below_mmhg } = document.numbers;
  const bounding = boundingReadings(readings, standings);
  if (bounding.length < least_readings) return undefined;
  const looked = bounding.slice(Math.max(0, bounding.length - of_latest));
  const above = chosen(ABOVE_GAUGE, document.choices.above_gauge);
  const reaches = (edge: number): boolean =>
    looked.every(({ systolic_mmhg: value }) => (value === undefined ? above.reaches : value >= edge));
  const staysBelow = (edge: number): boolean =>
    looked.every(({ systolic_mmhg: value }) => (value === undefined ? above.staysBelow : value < edge));
  const atLeast = at_least_mmhg.filter(reaches);
  const below = below_mmhg.filter(staysBelow);
  if (atLeast.length === 0 && below.length === 0) return undefined;
  return {
    ...(atLeast.length > 0 && { at_least_mmhg: Math.max(...atLeast) }),
    ...(below.length > 0 && { below_mmhg: Math.min(...below) }),
  };
}

/** Do these bounds alone say enough to act on? Raises when the deciding pressure is no edge: none could name it. */
export function boundsDecide(bounds: Bounds | undefined, document: BoundsDocument): boolean {
  const { at_least_mmhg: edges, decides_from_mmhg: decidesFrom } = document.numbers;
  if (!edges.includes(decidesFrom)) throw new Error(`bounds: ${decidesFrom} is no edge`);
  return bounds?.at_least_mmhg !== undefined && bounds.at_least_mmhg >= document.numbers.decides_from_mmhg;
}
