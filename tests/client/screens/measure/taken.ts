/* A measurement of a few readings for the tests beside this file; holds no expectation. */
import { started, type CuffSet, type Open, type Reading } from "../../../../client/src/screens/measure/open.ts";

type Value = number | NonNullable<Reading["beyond"]> | [number, NonNullable<Reading["set_aside"]>];

/** One reading: a systolic pressure, a pressure that was set aside, or why there was none. */
function readingOf(value: Value, n: number): Reading {
  if (typeof value === "number") return { id: String(n), systolic_mmhg: value };
  return typeof value === "string" ? { id: String(n), beyond: value } : { id: String(n), systolic_mmhg: value[0], set_aside: value[1] };
}

/** A dog measured by Doppler, with these readings in one set and whatever else is given. */
export function taken(values: Value[], also: Partial<Open["measurement"]> = {}, method: CuffSet["method"] = "doppler"): Open {
  const open = started({ id: "0", now_ms: 1_700_000_000_000, species: "dog", method });
  return { ...open, measurement: { ...open.measurement, ...also, sets: [{ method, readings: values.map(readingOf) }] } };
}
