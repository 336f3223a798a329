/* When the result is a reason to look at the animal and to call, whatever else is asked: at the highest edge, or low, or without a sound.
   The edges are those of the rule documents; sedation, age or a poor cuff switch nothing off here. Says no sentence. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import type { Assessment } from "../../rules/assessment";
import { RULES } from "./judged";
import type { Reading } from "./open";

export type Urgent = "highest" | "low" | "no_sound";

const { from_mmhg, low_pressure_mmhg } = RULES.documents.category.numbers;

/** The exact raw mean of the readings that count against a whole number of mmHg: below 0 when it lies below, undefined without one. */
function meanAgainst(mmhg: number, counted: readonly number[]): number | undefined {
  return counted.length === 0 ? undefined : counted.reduce((sum, value) => sum + value - mmhg, 0);
}

/** Someone listened, nobody set it aside, and no reading of the set has a number. */
function isWithoutSound(readings: readonly Reading[]): boolean {
  const meant = readings.filter(({ set_aside }) => set_aside === undefined);
  return meant.some(({ beyond }) => beyond === "no_sound") && meant.every(({ beyond }) => beyond === "no_sound" || beyond === "no_value");
}

/** What of the result calls for looking at the animal now; undefined when nothing does. */
export function urgentOf(measurement: Measurement, assessment: Assessment): Urgent | undefined {
  const at = assessment.result_set;
  const [set, readings] = [assessment.sets[at], measurement.sets[at]?.readings ?? []];
  const counts = new Set(set?.readings?.filter(({ standing }) => standing === "counted").map(({ id }) => id));
  const counted = readings.flatMap(({ id, systolic_mmhg }) => (counts.has(id) && systolic_mmhg !== undefined ? [systolic_mmhg] : []));
  const { at_least_mmhg, below_mmhg } = set?.bounds ?? {};
  const overHighest = meanAgainst(from_mmhg.high, counted) ?? (at_least_mmhg ?? -1) - from_mmhg.high;
  if (overHighest >= 0) return "highest";
  const overLow = meanAgainst(low_pressure_mmhg, counted) ?? (below_mmhg !== undefined && below_mmhg <= low_pressure_mmhg ? -1 : 0);
  if (overLow < 0) return "low";
  return isWithoutSound(readings) ? "no_sound" : undefined;
}
