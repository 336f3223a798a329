/*
 * When the animal comes before the number: below, at and above the edges of the shipped document (checked against the published 180
 * and 100 first), steady and scattered, and whatever withholds the band. Each mean is worked by hand.
 */
import { describe, expect, it } from "vitest";
import { ruleSet } from "../../../../client/src/contract/rule_documents.ts";
import { judged } from "../../../../client/src/screens/measure/judged.ts";
import type { Open } from "../../../../client/src/screens/measure/open.ts";
import { urgentOf } from "../../../../client/src/screens/measure/urgent.ts";
import { taken } from "./taken.ts";

const { from_mmhg, low_pressure_mmhg } = ruleSet().documents.category.numbers;
const urgent = (open: Open): string | undefined => urgentOf(open.measurement, judged(open));

it("stands on the edges of the document", () => {
  expect([from_mmhg.high, low_pressure_mmhg]).toEqual([180, 100]);
});

describe("the highest edge", () => {
  it.each([
    // the first does not count; sums of five 899, 900, 901: means 179.8, 180, 180.2
    [[185, 180, 179, 180, 180, 180], undefined],
    [[185, 180, 180, 180, 180, 180], "highest"],
    [[185, 180, 181, 180, 180, 180], "highest"],
  ])("readings that agree, %o: %s", (values, expected) => {
    expect(urgent(taken(values))).toBe(expected);
  });

  it("is held against the exact mean, not the rounded one", () => {
    // seven of 179 and 180 with the sum 1259: 179.857, rounded to a tenth 179.9; 180 needs 1260
    expect(urgent(taken([182, 180, 180, 180, 180, 180, 180, 179]))).toBeUndefined();
    expect(urgent(taken([182, 180, 180, 180, 180, 180, 180, 180]))).toBe("highest");
  });

  it("holds for a bound without an average: above the gauge and scattered from 190 to 250", () => {
    const series = (low: number): Open => taken([190, 250, "above_gauge", 200, 245, low, "above_gauge", 230]);
    expect(urgent(series(190))).toBe("highest");
    expect(urgent(series(180))).toBe("highest");
    expect(urgent(series(179))).toBeUndefined();
  });

  it.each([{ state: "sedated" as const }, { age_months: 5 }])("is not switched off by what withholds the band: %o", (also) => {
    const open = taken([185, 190, 191, 190, 189, 190], also);
    expect(judged(open).category).toBeUndefined();
    expect(urgent(open)).toBe("highest");
  });
});

describe("low pressure", () => {
  it.each([
    // sums of five 499, 500: means 99.8, 100
    [[104, 100, 99, 100, 100, 100], "low"],
    [[104, 100, 100, 100, 100, 100], undefined],
  ])("readings that agree, %o: %s", (values, expected) => {
    expect(urgent(taken(values))).toBe(expected);
  });

  it("holds for a bound: scattered, and each below 100", () => {
    expect(urgent(taken([90, 99, 60, 98, 61, 99]))).toBe("low");
    expect(urgent(taken([90, 100, 60, 98, 61, 99]))).toBeUndefined();
  });
});

describe("no sound", () => {
  it("is urgent where nothing else was heard", () => {
    expect(urgent(taken(["no_sound"]))).toBe("no_sound");
    expect(urgent(taken([140, "no_sound", "no_sound"]))).toBeUndefined();
    expect(urgent(taken(["no_sound", "above_gauge"]))).toBeUndefined();
  });

  it("is none with a machine that shows no value, and none before anything was tried", () => {
    expect(urgent(taken(["no_value", "no_value"], {}, "oscillometric"))).toBeUndefined();
    expect(urgent(taken([]))).toBeUndefined();
  });
});

it("says nothing of an ordinary pressure", () => {
  expect(urgent(taken([168, 142, 138, 140, 136, 144]))).toBeUndefined();
});
