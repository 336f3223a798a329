/* What the result would be with every reading in it that a person set aside: the rules asked once more, of a copy.
   It is never the result, and changes nothing of the measurement. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { assess } from "../../rules/assess";
import type { Assessment } from "../../rules/assessment";
import { RULES } from "./judged";
import type { Reading } from "./open";

/** The readings a person set aside, with the set they stand in, in the order taken. */
export function setAsideOf(measurement: Measurement): { set: number; reading: Reading }[] {
  return measurement.sets.flatMap(({ readings }, set) =>
    readings.filter(({ set_aside }) => set_aside !== undefined).map((reading) => ({ set, reading })));
}

/** A copy in which nothing is set aside. */
export function withAllPutBack(measurement: Measurement): Measurement {
  const sets = measurement.sets.map((set) => ({ ...set, readings: set.readings.map(({ set_aside: _aside, ...reading }) => reading) }));
  return { ...measurement, sets };
}

/** What the rules answer to that copy; undefined when nothing was set aside. */
export function assessedPutBack(measurement: Measurement): Assessment | undefined {
  return setAsideOf(measurement).length === 0 ? undefined : assess(withAllPutBack(measurement), RULES);
}
