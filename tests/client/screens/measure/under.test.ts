/*
 * Filing under another animal than the measurement was begun for: its age, its mark and its last visit are the other's from then on.
 * The animals are invented; ages are counted by hand.
 */
import { describe, expect, it } from "vitest";
import type { Visit } from "../../../../client/src/offline/journal.ts";
import { started, type Open } from "../../../../client/src/screens/measure/open.ts";
import { under } from "../../../../client/src/screens/measure/under.ts";

const AT = Date.UTC(2026, 10, 25, 12);
const DAY_MS = 86_400_000;
const day = (year: number, month: number): number => Date.UTC(year, month - 1, 1) / DAY_MS;
const visit = (days: number, site: string): Visit =>
  ({ id: "v", startedMs: AT - days * DAY_MS, letter: { body: { sets: [{ method: "doppler", site, readings: [{ id: "r" }] }] } } }) as unknown as Visit;

const KITTEN = { id: "kitten", name: "Pip", mark: "grey", born_on_day: day(2026, 8) };
const OLD_CAT = { id: "old", name: "Moss", born_on_day: day(2012, 11) };
const begun = (): Open => {
  const open = started({ id: "0", now_ms: AT, species: "cat", method: "doppler", patient: KITTEN, last: visit(7, "tail_base") });
  const sets = [{ method: "doppler" as const, readings: [{ id: "a", systolic_mmhg: 171 }] }];
  return { ...open, choosing: true, measurement: { ...open.measurement, place: "home", sets } };
};

describe("filed under another animal", () => {
  it("is its age, its last visit and its mark that count, and what was measured stays", () => {
    expect(begun()).toMatchObject({ mark: "grey", measurement: { age_months: 3, previous: { days_ago: 7, site: "tail_base" } } });
    const now = under(begun(), { species: "cat", patient: OLD_CAT, last: visit(30, "forearm") });
    expect(now.measurement).toEqual({ ...begun().measurement, patient: "old", age_months: 168, previous: { method: "doppler", site: "forearm", days_ago: 30 } });
    expect([now.name, now.mark, now.last, now.choosing]).toEqual(["Moss", undefined, { site: "forearm" }, undefined]);
  });

  it("nothing of the first is left where nothing is known of the other", () => {
    const now = under(begun(), { species: "dog", patient: { id: "new", name: "Rook" } });
    for (const key of ["age_months", "previous"]) expect(now.measurement).not.toHaveProperty(key);
    expect([now.measurement.species, now.measurement.patient, now.last]).toEqual(["dog", "new", undefined]);
  });

  it("an age a person typed stays", () => {
    const typed = { ...begun(), texts: { age: "9" }, measurement: { ...begun().measurement, age_months: 108 } };
    expect(under(typed, { species: "cat", patient: OLD_CAT }).measurement.age_months).toBe(108);
  });
});
