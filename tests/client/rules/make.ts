/*
 * Makes measurements for the tests of the rules: a calm, rested adult dog with a good cuff, and readings from numbers.
 * Invented values; a test states only what it is about.
 */
import { ruleSet } from "../../../client/src/contract/rule_documents.ts";
import { assess } from "../../../client/src/rules/assess.ts";
import type { Assessment } from "../../../client/src/rules/assessment.ts";
import type { Measurement, MeasurementSet, Reading } from "../../../client/src/rules/measurement.ts";

export const V1 = ruleSet();
export const DOCUMENTS = V1.documents;

/** A number is a systolic value; a reading given as an object keeps what it says. Ids are r1, r2, … */
export function readings(...values: (number | Partial<Reading>)[]): Reading[] {
  return values.map((value, index) => {
    const id = `r${index + 1}`;
    return typeof value === "number" ? { id, systolic_mmhg: value } : { id, ...value };
  });
}

/** A Doppler set whose first reading is dropped by rule 2, so that `values` are the eligible ones r2, r3, … */
export function set(values: (number | Partial<Reading>)[], more: Partial<MeasurementSet> = {}): MeasurementSet {
  return {
    method: "doppler",
    limb_circumference_mm: 100,
    cuff_width_mm: 40,
    readings: readings(150, ...values),
    ...more,
  };
}

export function measurement(sets: MeasurementSet[], more: Partial<Measurement> = {}): Measurement {
  return { species: "dog", rest_s: 900, demeanour: "calm", sets, ...more };
}

/** The assessment of one set of eligible values. */
export function assessed(
  values: (number | Partial<Reading>)[],
  ofSet: Partial<MeasurementSet> = {},
  ofVisit: Partial<Measurement> = {},
): Assessment {
  return assess(measurement([set(values, ofSet)], ofVisit), V1);
}

export function keys(assessment: Assessment): string[] {
  return (assessment.cautions ?? []).map((caution) => caution.key);
}
