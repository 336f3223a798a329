/* Under which animal a measurement is filed, where that is said or changed at its end. What was measured stays; what was known of the
   animal before (its age by its card, its last visit, its mark) is the new one's. Pure. Must not take away an age a person typed. */
import { limbsUnder } from "./limb_from";
import { started, type Open, type Start } from "./open";

/** The same measurement under this animal from now on; nothing of the one before is left, its limb included. */
export function under(before: Open, { patient, last, placed, species }: Pick<Start, "patient" | "last" | "placed" | "species">): Open {
  const open = limbsUnder(before, patient?.id);
  const { choosing: _choosing, name: _name, mark: _mark, last: _last, last_of: _of, measurement, ...rest } = open;
  const { patient: _patient, previous: _previous, age_months, ...measured } = measurement;
  const [set] = measurement.sets;
  const anew = started({
    id: open.id, now_ms: measurement.started_at_ms ?? 0, species, method: set?.method ?? "doppler",
    ...(patient ? { patient } : {}), ...(last ? { last } : {}), ...(placed ? { placed } : {}),
  });
  const isTyped = Boolean(open.texts["age"]?.trim());
  const { sets: _sets, started_at_ms: _started, age_months: age_by_card, ...known } = anew.measurement;
  const age = isTyped ? age_months : age_by_card;
  return {
    ...rest,
    ...(anew.name === undefined ? {} : { name: anew.name }), ...(anew.mark ? { mark: anew.mark } : {}), ...(anew.last ? { last: anew.last } : {}),
    ...(anew.last_of ? { last_of: anew.last_of } : {}),
    measurement: { ...measured, ...known, ...(age === undefined ? {} : { age_months: age }) },
  };
}
