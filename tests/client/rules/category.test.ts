/*
 * Rule 7. The bands are those of the published consensus on blood pressure in dogs and cats (J Vet Intern Med
 * 2018;32:1803-1822, edges 140, 160, 180; from memory and from later papers); the rest is worked from the rule text.
 */
import { describe, expect, test } from "vitest";
import { assess } from "../../../client/src/rules/assess.ts";
import { V1, assessed, measurement, set } from "./make.ts";

const five = (value: number): number[] => [value, value, value, value, value];
const withheld = (values: number[], ofSet = {}, visit = {}) => assessed(values, ofSet, visit).category_withheld;

test.each([
  [100, "minimal"],
  [139, "minimal"],
  [140, "low"],
  [159, "low"],
  [160, "moderate"],
  [179, "moderate"],
  [180, "high"],
  [300, "high"],
])("a mean of %i is %s", (value, category) => expect(assessed(five(value)).category).toBe(category));

test("the exact mean decides, not the rounded one: 139.8 and 179.8", () => {
  expect(assessed([140, 140, 140, 140, 139]).category).toBe("minimal");
  expect(assessed([180, 180, 180, 180, 179]).category).toBe("moderate");
});

describe("withheld, the first that applies", () => {
  test("sedated, before all else", () => {
    expect(withheld(five(90), {}, { state: "sedated", age_months: 3 })).toBe("sedated");
    expect(withheld(five(150), {}, { state: "calmed" })).toBeUndefined();
  });
  test("not adult under 12 months", () => {
    expect(withheld(five(150), {}, { age_months: 11 })).toBe("not_adult");
    expect(withheld(five(150), {}, { age_months: 12 })).toBeUndefined();
  });
  test("the verdict", () => {
    expect(withheld([150])).toBe("too_few");
    expect(withheld([52, 53, 51, 50, 50])).toBe("falling");
    expect(withheld([140, 140, 179, 140, 140])).toBe("scattered");
  });
  test("low pressure", () => {
    expect(withheld([100, 100, 100, 100, 99])).toBe("low_pressure");
    expect(withheld(five(100))).toBeUndefined();
  });
  test("height moves it to another band: 150 at 125 mm is 160 exactly, at 124 mm 159.92", () => {
    expect(withheld(five(150), { cuff_above_heart_mm: 125 })).toBe("height");
    expect(withheld(five(150), { cuff_above_heart_mm: 124 })).toBeUndefined();
  });
  test("height moves it below 100: 108 at −101 mm is 99.92, 109 stays above", () => {
    expect(withheld(five(108), { cuff_above_heart_mm: -101 })).toBe("height");
    expect(withheld(five(109), { cuff_above_heart_mm: -101 })).toBeUndefined();
  });
  test("poor cuff, unless its error points away", () => {
    expect(withheld(five(150), { cuff_width_mm: 29 })).toBe("cuff");
    expect(withheld(five(150), { cuff_width_mm: 30 })).toBeUndefined();
    expect(withheld(five(130), { cuff_width_mm: 29 })).toBeUndefined();
    expect(withheld(five(130), { cuff_width_mm: 51 })).toBe("cuff");
    expect(withheld(five(190), { cuff_width_mm: 51 })).toBeUndefined();
    expect(withheld(five(190), { cuff_width_mm: 29 })).toBe("cuff");
    expect(withheld(five(150), { cuff_width_mm: undefined })).toBeUndefined();
  });
});

describe("near edges: mean − m < edge ≤ mean + m", () => {
  test("at least 5 mmHg either way, the lower side open", () => {
    expect(assessed(five(135)).near_edges_mmhg).toEqual([140]);
    expect(assessed(five(134)).near_edges_mmhg).toBeUndefined();
    expect(assessed(five(144)).near_edges_mmhg).toEqual([140]);
    expect(assessed(five(145)).near_edges_mmhg).toBeUndefined();
  });
  test("a wider interval counts: 140 150 160 170 150, SD 11.40, half width 14.2 around 154", () => {
    const found = assessed([140, 150, 160, 170, 150]);
    expect(found.sets[0].systolic?.ci95_half_width_tenths_mmhg).toBe(142);
    expect(found.near_edges_mmhg).toEqual([140, 160]);
  });
  test("none without a category", () => {
    expect(assessed(five(140), {}, { state: "sedated" }).near_edges_mmhg).toBeUndefined();
  });
});

describe("which set is the result", () => {
  const index = (...sets: number[][]): number => assess(measurement(sets.map((values) => set(values))), V1).result_set;
  test("the latest with a window", () => {
    expect(index(five(150), five(150), [150])).toBe(1);
    expect(index([150], [150])).toBe(1);
  });
  test("bounds of 180 count as much as a window", () => {
    expect(index(five(150), [180, 240, 200])).toBe(1);
    expect(index(five(150), [179, 240, 200])).toBe(0);
  });
});

test("firmness", () => {
  expect(assessed(five(150)).firmness).toBe("firm");
  expect(assessed(five(150), {}, { demeanour: "tense" }).firmness).toBe("with_care");
  expect(assessed([150], {}, { demeanour: "tense" }).firmness).toBe("not_placed");
});
