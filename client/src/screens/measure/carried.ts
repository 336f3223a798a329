/* What the bag in use holds for this measurement: widths, gauges, and the instruments of a method; and what it says of them.
   Pure. A bag says what its people wrote into it: "as far as the bag says". */
import type { Bag1 as Bag, Measurement1 as Measurement } from "../../contract/wire_types";
import type { CuffSet, Saying } from "./open";

type Instrument = NonNullable<Bag["machines"]>[number];

/** Widths in mm, ascending, once each, with the marks on the cuffs of that width. */
export function widthsOf(bag: Bag | undefined): { width_mm: number; marks: string[] }[] {
  const marks = new Map<number, string[]>();
  for (const { width_mm, mark } of bag?.cuffs ?? []) marks.set(width_mm, [...(marks.get(width_mm) ?? []), ...(mark ? [mark] : [])]);
  return [...marks].map(([width_mm, found]) => ({ width_mm, marks: found })).sort((one, other) => one.width_mm - other.width_mm);
}

/** What hears or counts the pulse by this method: detectors for Doppler, machines for oscillometry. */
export function instrumentsOf(bag: Bag | undefined, method: CuffSet["method"]): readonly Instrument[] {
  return (method === "doppler" ? bag?.detectors : bag?.machines) ?? [];
}

/** The names of the gauges of a type. */
export function gaugeNames(bag: Bag | undefined, type: NonNullable<CuffSet["gauge"]>): string[] {
  return (bag?.gauges ?? []).filter((gauge) => gauge.type === type).map(({ name }) => name);
}

/** What the bag says of a machine and this species where it is not "validated"; undefined otherwise, and for what it does not hold. */
export function notValidated(bag: Bag | undefined, set: CuffSet, species: Measurement["species"]): Saying | undefined {
  if (set.method !== "oscillometric" || set.instrument === undefined) return undefined;
  const machine = instrumentsOf(bag, set.method).find(({ name }) => name === set.instrument);
  if (!machine || machine.validated_in?.includes(species)) return undefined;
  return { word: machine.validated_in ? `validated-not-${species}` : `validated-unknown-${species}`, facts: {} };
}
