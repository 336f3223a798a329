/*
 * "As last time" against what is known today: taken over, or said to differ and left open. And the folds of the part: what stands
 * open after an answer. The bag and the animal are invented; days are counted by hand.
 */
import { describe, expect, it } from "vitest";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import type { Visit } from "../../../../client/src/offline/journal.ts";
import { movedOn, openedWith, unanswered } from "../../../../client/src/screens/measure/cuff_question.tsx";
import { asLast, limbOfLast, takenFromLast } from "../../../../client/src/screens/measure/last_set.ts";
import { lastsOf, setNow, started, type CuffSet, type Open } from "../../../../client/src/screens/measure/open.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

const DAY_MS = 86_400_000;
/** Noon where the test runs, so that it holds in every time zone. */
const NOW_MS = new Date(2026, 10, 25, 12).getTime();
const SET: CuffSet = {
  method: "oscillometric", site: "forearm", side: "left", posture: "sternal", restraint: "held", instrument: "Box 2",
  limb_circumference_mm: 85, cuff_width_mm: 30, readings: [],
};

/** A cat whose last visit was so many days ago. */
function known(days: number, set: CuffSet = SET): Open {
  const startedMs = NOW_MS - days * DAY_MS;
  const last = { id: "v", startedMs, letter: { body: { species: "cat", started_at_ms: startedMs, sets: [set] } } } as unknown as Visit;
  return started({ id: "0", now_ms: NOW_MS, species: "cat", method: "doppler", patient: { id: "p", name: "Quill" }, last });
}

const BAG = { name: "Van", cuffs: [{ width_mm: 25 }, { width_mm: 30 }], machines: [{ name: "Box 2" }] };
const words = (open: Open, today: Parameters<typeof asLast>[1]): string[] => asLast(open, today)?.differs.map(({ word }) => word) ?? [];

describe("as last time", () => {
  it("takes over all of it in one act where nothing differs", () => {
    const open = known(20);
    const last = asLast(open, { bag: BAG, barred: [] });
    expect(last?.differs).toEqual([]);
    const now = takenFromLast(open, last?.take ?? {});
    expect(setNow(now)).toEqual(SET);
    expect(checkMeasurement({ ...now.measurement, patient: "0123abcd-0000-7000-8000-000000000000" } as never)).toBeUndefined();
    expect(setNow(undone(now)[0])).toEqual(setNow(open));
  });

  it.each([
    ["a cuff that is not in this bag", { bag: { name: "Van", cuffs: [{ width_mm: 25 }] }, barred: [] }, "differs-cuff", ["cuff_width_mm"]],
    ["a machine that is not in this bag", { bag: { name: "Van", machines: [{ name: "Box 3" }] }, barred: [] }, "differs-instrument", ["instrument"]],
    ["a site that is not to be used", { barred: [{ site: "forearm", why: "wound" }] }, "differs-site", ["site", "side"]],
    ["its side alone", { barred: [{ site: "forearm", side: "left", why: "catheter" }] }, "differs-site", ["site", "side"]],
  ] as const)("says %s and leaves it open", (_name, today, word, keys) => {
    expect(words(known(20), today)).toEqual([word]);
    const take = asLast(known(20), today)?.take ?? {};
    for (const key of keys) expect(take).not.toHaveProperty(key);
    expect(Object.keys(take)).toHaveLength(8 - keys.length);
  });

  it("finds nothing missing where there is no bag, or the other side is barred", () => {
    expect(words(known(20), { barred: [{ site: "forearm", side: "right", why: "wound" }] })).toEqual([]);
  });

  it("tells a gauge of another kind", () => {
    const open = known(20, { ...SET, method: "doppler", gauge: "digital" });
    expect(words(open, { bag: { name: "Van", gauges: [{ name: "G", type: "aneroid" }], detectors: [{ name: "Box 2" }] }, barred: [] })).toEqual(["differs-gauge"]);
  });

  it("leaves the method alone once readings were taken by it", () => {
    const open = known(20);
    const [set] = open.measurement.sets;
    const begun = { ...open, measurement: { ...open.measurement, sets: [{ ...(set as CuffSet), readings: [{ id: "r" }] }] } };
    expect(asLast(begun, { barred: [] })?.take).not.toHaveProperty("method");
    expect(asLast(open, { barred: [] })?.take.method).toBe("oscillometric");
  });

  it("says the day of the limb, and to measure again from half a year on", () => {
    const then = (days: number): ReturnType<typeof limbOfLast> => {
      const open = known(days);
      return limbOfLast(takenFromLast(open, asLast(open, { barred: [] })?.take ?? {}));
    };
    const today = Date.UTC(2026, 10, 25) / DAY_MS;
    expect(then(0)).toBeUndefined();
    expect(then(183)).toEqual({ day: today - 183, isOld: false });
    expect(then(184)).toEqual({ day: today - 184, isOld: true });
    expect(limbOfLast(known(20))).toBeUndefined();
  });

  it("counts days by the calendar where the phone is: yesterday at 16:00 is not today at 10:00", () => {
    const [then, now] = [new Date(2026, 10, 24, 16).getTime(), new Date(2026, 10, 25, 10).getTime()];
    const last = { id: "v", startedMs: then, letter: { body: { species: "cat", started_at_ms: then, sets: [SET] } } } as unknown as Visit;
    const open = started({ id: "0", now_ms: now, species: "cat", method: "doppler", last });
    expect(open.measurement.previous?.days_ago).toBe(1);
    expect(limbOfLast(takenFromLast(open, asLast(open, { barred: [] })?.take ?? {}))?.day).toBe(Date.UTC(2026, 10, 24) / DAY_MS);
  });
});

describe("a visit that noted no cuff", () => {
  const visitOf = (days: number, set: CuffSet): Visit =>
    ({ id: String(days), startedMs: NOW_MS - days * DAY_MS, letter: { body: { species: "cat", sets: [set] } } }) as unknown as Visit;
  const readings = [{ id: "r", systolic_mmhg: 212 }];
  const [bare, noted] = [visitOf(2, { method: "doppler", readings }), visitOf(18, { ...SET, readings })];
  const putOff = visitOf(1, { ...SET, site: "hindlimb" as never, readings: [] });
  const opened = (...visits: Visit[]): Open =>
    started({ id: "0", now_ms: NOW_MS, species: "cat", method: "doppler", patient: { id: "p", name: "Quill" }, ...lastsOf(visits) });

  it("is what the rules compare with, while the cuff is taken over from the one before, with that one's method and day", () => {
    const open = opened(putOff, bare, noted);
    expect(open.measurement.previous).toEqual({ method: "doppler", days_ago: 2 });
    const now = takenFromLast(open, asLast(open, { barred: [] })?.take ?? {});
    expect(setNow(now)).toEqual(SET);
    expect(limbOfLast(now)?.day).toBe(Date.UTC(2026, 10, 7) / DAY_MS);
  });

  it("is nothing to take over from where no visit noted any", () => {
    expect(opened(putOff, bare).last).toBeUndefined();
    expect(lastsOf([])).toEqual({});
  });
});

describe("what stands open", () => {
  it("asks for a gauge by Doppler alone, and for nothing that was answered, level at 0 mm included", () => {
    const left = (set: Partial<CuffSet>): string[] => {
      const open = known(20);
      const [first] = open.measurement.sets;
      return unanswered({ ...open, measurement: { ...open.measurement, sets: [{ ...(first as CuffSet), ...set }] } }, ["restraint"]);
    };
    expect(left({ ...SET, cuff_above_heart_mm: 0 })).toEqual([]);
    expect(left({ ...SET, method: "doppler" })).toEqual(["height", "gauge"]);
    expect(left({ site: "tail_base" })).toEqual(["limb", "width", "posture", "height", "gauge", "instrument"]);
    expect(left({ site: "forearm" })[0]).toBe("site");
  });

  it("begins with the first question, and asks limb and cuff together", () => {
    expect(openedWith(["method", "site", "limb", "width"])).toEqual(["method", "site"]);
    expect(openedWith(["limb", "width", "height"])).toEqual(["limb", "width"]);
    expect(openedWith([])).toEqual([]);
  });

  it("stays with a question half answered, then goes on to the next", () => {
    const shown = new Set(["method", "site"] as const);
    expect(movedOn(shown, "site", ["method", "site", "limb", "width"])).toBe(shown);
    expect([...movedOn(shown, "site", ["method", "limb", "width", "posture"])]).toEqual(["limb", "width"]);
    expect([...movedOn(new Set(["limb", "width"] as const), "width", ["limb", "posture"])]).toEqual(["limb", "width"]);
    expect([...movedOn(new Set(["restraint"] as const), "restraint", [])]).toEqual([]);
  });
});
