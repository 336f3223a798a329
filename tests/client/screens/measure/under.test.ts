/*
 * Filing under another animal than the measurement was begun for: its age, its mark and its last visit are the other's from then on.
 * The animals are invented; ages are counted by hand.
 */
import { describe, expect, it } from "vitest";
import type { Visit } from "../../../../client/src/offline/journal.ts";
import { setNow, started, type Open } from "../../../../client/src/screens/measure/open.ts";
import { asLast, limbOfLast, takenFromLast } from "../../../../client/src/screens/measure/last_set.ts";
import { withLimb } from "../../../../client/src/screens/measure/limb.ts";
import { limbTakenOut } from "../../../../client/src/screens/measure/limb_from.ts";
import { newSet } from "../../../../client/src/screens/measure/series.ts";
import { under } from "../../../../client/src/screens/measure/under.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

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

const ROOK = { species: "dog" as const, patient: { id: "rook", name: "Rook" } };
const HOB = { species: "dog" as const, patient: { id: "hob", name: "Hob" } };
const MOSS = { species: "dog" as const, patient: { id: "moss", name: "Moss" } };
const PLACED = { method: "doppler", site: "forearm", side: "left", posture: "sternal", instrument: "Probe 1", limb_circumference_mm: 118, cuff_width_mm: 45 };
/** 18 days before the 25th of November: the 7th, where the test runs. */
const DAY_7 = Date.UTC(2026, 10, 7) / DAY_MS;
const ROOKS = { ...visit(18, "forearm"), letter: { body: { sets: [{ ...PLACED, readings: [{ id: "r" }] }] } } } as unknown as Visit;
const atRook = (): Open => started({ id: "0", now_ms: AT, method: "doppler", ...ROOK, last: ROOKS });
const asRooksLast = (open = atRook()): Open => takenFromLast(open, asLast(open, { barred: [] })?.take ?? {});
const limbs = (open: Open): (number | undefined)[] => open.measurement.sets.map((set) => set.limb_circumference_mm);

describe("a limb taken over from the former animal's last visit", () => {
  it("is taken out under another and said with its day; cuff, site, posture and instrument stay", () => {
    const now = under(asRooksLast(), HOB);
    const { limb_circumference_mm: _limb, ...stays } = PLACED;
    expect(setNow(now)).toEqual({ ...stays, readings: [] });
    expect(limbTakenOut(now)).toEqual({ name: "Rook", day: DAY_7 });
    expect([now.texts["circumference"] ?? "", limbOfLast(now)]).toEqual(["", undefined]);
    expect(setNow(withLimb(now, "12.4")).limb_circumference_mm).toBe(124);
    expect(limbTakenOut(withLimb(now, "12.4"))).toBeUndefined();
  });

  it("comes back with the first animal, and is known as old again", () => {
    const back = under(under(under(asRooksLast(), HOB), MOSS), { ...ROOK, last: ROOKS });
    expect([limbs(back), back.texts["circumference"], limbTakenOut(back), limbOfLast(back)?.day]).toEqual([[118], "118 mm", undefined, DAY_7]);
    expect(limbs(under(back, HOB))).toEqual([undefined]);
  });

  it("is none once it was measured today, be it the very same; that stays, there and back", () => {
    for (const [text, mm] of [["12", 120], ["11.8", 118]] as const) {
      const typed = withLimb({ ...asRooksLast(), texts: { circumference_unit: "cm" } }, text);
      expect(limbOfLast(typed)).toBeUndefined();
      const hobs = under(typed, HOB);
      expect([limbs(hobs), limbTakenOut(hobs), limbs(under(hobs, { ...ROOK, last: ROOKS }))]).toEqual([[mm], undefined, [mm]]);
    }
    const measured = withLimb(under(asRooksLast(), HOB), "13");
    expect(limbs(under(measured, MOSS))).toEqual([130]);
    expect(limbs(under(measured, { ...ROOK, last: ROOKS }))).toEqual([130]);
  });

  it("is taken out of every set it was carried into, and of none where it was measured", () => {
    const moved = newSet(asRooksLast(), "moved");
    expect(limbs(under(moved, HOB))).toEqual([undefined, undefined]);
    expect(limbs(under(withLimb(moved, "12 cm"), HOB))).toEqual([undefined, 120]);
  });

  it("does not come back by undo; what the person typed before does", () => {
    const own = withLimb(atRook(), "12");
    expect(limbs(undone(under(asRooksLast(own), HOB))[0])).toEqual([120]);
    const twice = asRooksLast(asRooksLast());
    expect(limbs(undone(under(twice, HOB))[0])).toEqual([undefined]);
    const elsewhere = undone(under(newSet(asRooksLast(), "site"), HOB))[0];
    expect([limbs(elsewhere), elsewhere.texts["circumference"] ?? ""]).toEqual([[undefined], ""]);
  });

  it("stays where the same animal is chosen", () => {
    expect(limbs(under(asRooksLast(), { ...ROOK, last: ROOKS }))).toEqual([118]);
  });
});
