/* Drugs on board that move the pressure: groups and hours since, never a dose. Pure. Calming drugs stand with the state. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { without, type Open } from "./open";
import { done, type Patch } from "./undo";

export type Drug = NonNullable<Measurement["drugs"]>[number];

export const DRUG_GROUPS = [
  "calcium_channel_blocker", "ace_inhibitor", "angiotensin_receptor_blocker", "beta_blocker", "diuretic", "steroid", "thyroid",
  "sympathomimetic", "other", "not_known",
] as const satisfies readonly Drug["group"][];

/** As many as the wire document takes. */
export const DRUGS_MOST = 8;

/** Hours since it was given that are offered: each of the first day, then the usual spans. */
export const HOURS: readonly number[] = [...Array.from({ length: 25 }, (_, hour) => hour), 36, 48, 72, 96, 168, 240];

function put(open: Open, drugs: Drug[]): Open {
  const patch: Patch = { at: ["measurement", "drugs"], ...(drugs.length > 0 ? { to: drugs.map((drug) => ({ ...drug })) } : {}) };
  return done(without(open), "act-choice", { field: "field-drugs" }, [patch]);
}

/** One more, hours not known yet. A list that is full stays as it is. */
export function withDrug(open: Open, group: Drug["group"]): Open {
  const { drugs = [] } = open.measurement;
  return drugs.length >= DRUGS_MOST ? open : put(open, [...drugs, { group }]);
}

/** Without the one at this place. */
export function withoutDrug(open: Open, at: number): Open {
  return put(open, (open.measurement.drugs ?? []).filter((_, place) => place !== at));
}

/** Hours since the one at this place was given; undefined: not known. */
export function withHours(open: Open, at: number, hours: number | undefined): Open {
  const { drugs = [] } = open.measurement;
  return put(open, drugs.map((drug, place) => (place !== at ? drug : { group: drug.group, ...(hours === undefined ? {} : { hours }) })));
}
