/*
 * Add, second taps, the unusual, set aside, new sets: what is done to the series, without a screen.
 * Limits of the unusual are those of the shipped documents; the values beside them are read off by hand.
 */
import { describe, expect, it } from "vitest";
import { ruleSet } from "../../../../client/src/contract/rule_documents.ts";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import { started, setNow, type Open } from "../../../../client/src/screens/measure/open.ts";
import { typed } from "../../../../client/src/screens/measure/pad.ts";
import { added, addedNumbers, attempted, finished, kept, newSet, questionsOf, SECOND_TAP_MS, setAside } from "../../../../client/src/screens/measure/series.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

const { standing, cautions } = ruleSet().documents;
const LIMITS = { possible: { ...standing.numbers.possible_mmhg }, likely: { ...cautions.numbers.likely_mmhg } };
const BEGUN = 1_700_000_000_000;

const open = (): Open => started({ id: "0", now_ms: BEGUN, species: "dog", method: "doppler" });

function add(now: Open, text: string, at_ms: number): Open {
  return added({ ...now, pad: typed(now.pad, "systolic", text) }, at_ms, `at-${at_ms}`, LIMITS);
}

const values = (now: Open): (number | undefined)[] => setNow(now).readings.map((reading) => reading.systolic_mmhg);

describe("add", () => {
  it("keeps whole seconds since the measurement began, and clears the pad", () => {
    const now = add(open(), "142", BEGUN + 61_900);
    expect(setNow(now).readings).toEqual([{ id: `at-${BEGUN + 61_900}`, taken_s: 61, systolic_mmhg: 142 }]);
    expect(now.pad.texts).toEqual({});
    expect(checkMeasurement(now.measurement as never)).toBeUndefined();
  });

  it("leaves the time out when the phone's clock went back", () => {
    expect(setNow(add(open(), "142", BEGUN - 5000)).readings[0]).not.toHaveProperty("taken_s");
  });

  it("holds back a second tap within 400 ms, shows it, and adds it when asked", () => {
    const once = add(open(), "142", BEGUN + 1000);
    for (const text of ["", "142"]) {
      const twice = add(once, text, BEGUN + 1000 + SECOND_TAP_MS - 1);
      expect(values(twice)).toEqual([142]);
      expect(twice.sheet).toEqual({ kind: "second_tap", numbers: { systolic_mmhg: 142 } });
      expect(values(addedNumbers(twice, { systolic_mmhg: 142 }, BEGUN + 3000, "again"))).toEqual([142, 142]);
    }
  });

  it("takes the same number again after 400 ms, and another one at any time", () => {
    const once = add(open(), "142", BEGUN + 1000);
    expect(values(add(once, "142", BEGUN + 1000 + SECOND_TAP_MS))).toEqual([142, 142]);
    expect(values(add(once, "143", BEGUN + 1001))).toEqual([142, 143]);
  });

  it("says what is missing and keeps wrong text", () => {
    expect(add(open(), "", BEGUN + 1000).problem?.word).toBe("ask-systolic");
    const wrong = add(open(), "14x", BEGUN + 1000);
    expect(wrong.problem).toMatchObject({ field: "systolic", word: "ask-whole" });
    expect(wrong.pad.texts).toEqual({ systolic: "14x" });
  });
});

describe("the unusual is asked and never refused", () => {
  it.each([
    [79, ["unlikely-outside"]], [80, []], [240, []], [241, ["unlikely-outside"]],
    [19, ["impossible-outside"]], [20, ["unlikely-outside"]], [300, ["unlikely-outside"]], [301, ["impossible-outside"]],
  ])("systolic %i", (systolic_mmhg, words) => {
    expect(questionsOf({ systolic_mmhg }, LIMITS).map(({ word }) => word)).toEqual(words);
  });

  it("asks about an order that cannot be, equal values included", () => {
    const asked = (mean_mmhg: number): string[] => questionsOf({ systolic_mmhg: 120, mean_mmhg, diastolic_mmhg: 80 }, LIMITS).map(({ word }) => word);
    expect(asked(100)).toEqual([]);
    expect(asked(120)).toEqual(["impossible-order"]);
    expect(asked(80)).toEqual(["impossible-order"]);
    expect(questionsOf({ systolic_mmhg: 120, diastolic_mmhg: 130 }, LIMITS)[0]).toEqual({ word: "impossible-order", facts: { systolic: 120, diastolic: 130 } });
  });

  it("waits for Keep, then adds it as typed", () => {
    const asked = add(open(), "340", BEGUN + 1000);
    expect(values(asked)).toEqual([]);
    expect(values(kept(asked, BEGUN + 2000, "k"))).toEqual([340]);
  });
});

describe("the series", () => {
  it("sets aside with a reason, puts back, and both can be undone", () => {
    const one = add(open(), "190", BEGUN + 1000);
    const id = setNow(one).readings[0]?.id ?? "";
    const aside = setAside(one, id, "moved", "190");
    expect(setNow(aside).readings[0]?.set_aside).toBe("moved");
    const back = setAside(aside, id, undefined, "190");
    expect(setNow(back).readings[0]).not.toHaveProperty("set_aside");
    expect(setNow(undone(back)[0]).readings[0]?.set_aside).toBe("moved");
  });

  it("begins a set that keeps site and cuff, but not the cuff that was changed nor the method", () => {
    const one = open();
    const set = { ...setNow(one), site: "forearm" as const, cuff_width_mm: 40, gauge: "aneroid" as const };
    const now = { ...one, measurement: { ...one.measurement, sets: [set] } };
    expect(setNow(newSet(now, "moved"))).toEqual({ ...set, readings: [] });
    expect(setNow(newSet(now, "changed"))).toEqual({ site: "forearm", method: "doppler", gauge: "aneroid", readings: [] });
    expect(setNow(newSet(now, "method"))).toEqual({ site: "forearm", cuff_width_mm: 40, method: "oscillometric", readings: [] });
    expect(undone(newSet(now, "moved"))[0].measurement).toEqual(now.measurement);
  });

  it("holds forty readings and six sets, says so, and loses nothing", () => {
    let now = open();
    for (let n = 0; n < 41; n += 1) now = attempted(now, "no_sound", BEGUN + n * 1000, `r${n}`, "x");
    expect(setNow(now).readings).toHaveLength(40);
    expect(now.said?.word).toBe("set-full");
    for (let n = 0; n < 6; n += 1) now = newSet(now, "moved");
    expect(now.measurement.sets).toHaveLength(6);
    expect(now.said?.word).toBe("sets-full");
  });

  it("Finish shows the result and can be undone", () => {
    const now = finished(open());
    expect([now.finished, now.part]).toEqual([true, "result"]);
    expect(undone(now)[0]).toMatchObject({ finished: false, part: "ready" });
  });
});
