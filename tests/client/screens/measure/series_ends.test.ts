/*
 * What interrupts or ends a series: another site, a tapped pulse, a second look, a stop. Each is one act that one Undo takes back.
 */
import { describe, expect, it } from "vitest";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import { setNow, type Open } from "../../../../client/src/screens/measure/open.ts";
import { addedNumbers, markedIrregular, newSet, pulseTaken, secondLook, stopped, wentOn } from "../../../../client/src/screens/measure/series.ts";
import { secondLookLeft_s } from "../../../../client/src/screens/measure/since.tsx";
import { undone } from "../../../../client/src/screens/measure/undo.ts";
import { taken } from "./taken.ts";

const AT = 1_700_000_100_000;
const PULSE = { bpm: 150, intervals: 9, span_ms: 3600, shortest_ms: 400, longest_ms: 400 };

describe("another site", () => {
  const there: Open = { ...taken([150, 140]), part: "readings", texts: { circumference: "13", width: "50", height: "12", instrument: "probe 1" } };
  const set = {
    ...setNow(there), site: "forearm" as const, side: "left" as const, limb_circumference_mm: 130, cuff_width_mm: 50,
    cuff_above_heart_mm: 120, gauge: "aneroid" as const, instrument: "probe 1", posture: "lateral" as const,
  };
  const open: Open = { ...there, measurement: { ...there.measurement, sets: [set] } };

  it("takes over what measures and how the animal lies, and nothing of where the cuff lay", () => {
    const next = newSet(open, "site");
    expect(setNow(next)).toEqual({ method: "doppler", gauge: "aneroid", instrument: "probe 1", posture: "lateral", readings: [] });
    expect([next.texts["circumference"], next.texts["width"], next.texts["height"], next.texts["instrument"]]).toEqual(["", "", "", "probe 1"]);
    expect(next.part).toBe("cuff");
  });

  it("is one act", () => {
    const back = undone(newSet(open, "site"))[0];
    expect([back.measurement, back.texts, back.part]).toEqual([open.measurement, open.texts, open.part]);
  });
});

describe("a tapped pulse", () => {
  it("goes to the latest reading, also of the set before", () => {
    const open = taken([150, 140]);
    expect(setNow(pulseTaken(open, PULSE)).readings.map(({ palpated_bpm }) => palpated_bpm)).toEqual([undefined, 150]);
    const anew = newSet(open, "moved");
    expect(pulseTaken(anew, PULSE).measurement.sets[0]?.readings[1]?.palpated_bpm).toBe(150);
    expect(undone(pulseTaken(open, PULSE))[0].measurement).toEqual(open.measurement);
  });

  it("waits for the first reading, and goes to that one alone", () => {
    const waiting = pulseTaken(taken([]), PULSE);
    expect(waiting.palpated_bpm).toBe(150);
    const one = addedNumbers(waiting, { systolic_mmhg: 142 }, AT, "a");
    const two = addedNumbers(one, { systolic_mmhg: 140 }, AT + 1000, "b");
    expect(setNow(two).readings.map(({ palpated_bpm }) => palpated_bpm)).toEqual([150, undefined]);
    expect(undone(one)[0].palpated_bpm).toBe(150);
    expect(checkMeasurement(two.measurement as never)).toBeUndefined();
  });

  it("marks no rhythm by itself; the person does", () => {
    const open = pulseTaken(taken([150]), { ...PULSE, longest_ms: 900 });
    expect(open.measurement).not.toHaveProperty("rhythm");
    expect(markedIrregular(open)).toMatchObject({ measurement: { rhythm: "irregular" } });
    expect(markedIrregular(open).sheet).toBeUndefined();
  });
});

describe("a second look", () => {
  // the measurement began at 1,700,000,000,000; its readings were taken without a known time
  const open: Open = { ...taken([150, 151]), finished: true, part: "result" };
  const looking = secondLook(open, AT, 600);

  it("goes on in the same set, hides the result again, and is counted from an instant", () => {
    expect([looking.part, looking.finished, looking.measurement.sets.length]).toEqual(["readings", false, 1]);
    expect(secondLookLeft_s(looking, AT + 1000)).toBe(599);
    expect(secondLookLeft_s(looking, AT + 600_000)).toBe(0);
    expect(undone(looking)[0]).toMatchObject({ part: "result", finished: true });
  });

  it("is over with the next reading", () => {
    const next = addedNumbers(looking, { systolic_mmhg: 141 }, AT + 601_000, "n");
    expect(secondLookLeft_s(next, AT + 602_000)).toBeUndefined();
    expect(next.measurement).not.toHaveProperty("rest_s");
  });
});

describe("a stop", () => {
  const open: Open = { ...taken([150, 151]), part: "readings" };

  it("keeps what was taken, says why, and shows the result", () => {
    const done = stopped(open, "bite_or_scratch");
    expect(done).toMatchObject({ finished: true, part: "result", measurement: { outcome: { kind: "stopped", why: "bite_or_scratch" } } });
    expect(done.measurement.sets).toEqual(open.measurement.sets);
    expect(checkMeasurement(done.measurement as never)).toBeUndefined();
    expect(undone(done)[0]).toMatchObject({ finished: false, part: "readings", measurement: open.measurement });
  });

  it("is none any more once somebody goes on", () => {
    expect(wentOn(stopped(open, "other")).measurement).not.toHaveProperty("outcome");
    expect(wentOn(stopped(open, "other")).part).toBe("readings");
  });
});
