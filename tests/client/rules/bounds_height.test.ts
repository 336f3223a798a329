/* Rules 5 and 6, worked by hand from shared_schemas/rules/README.md. */
import { describe, expect, test } from "vitest";
import { assessed } from "./make.ts";

const bounds = (...values: Parameters<typeof assessed>[0]) => assessed(values).sets[0].bounds;
const above = { beyond: "above_gauge" } as const;

describe("bounds of a set without a window", () => {
  test.each([
    [[139, 139, 139], { below_mmhg: 140 }],
    [[140, 159, 160], { at_least_mmhg: 140, below_mmhg: 180 }],
    [[160, 161, 179], { at_least_mmhg: 160, below_mmhg: 180 }],
    [[180, 200, 220], { at_least_mmhg: 180 }],
    [[99, 98, 97], { below_mmhg: 100 }],
    [[100, 98, 97], { below_mmhg: 140 }],
    [[139, 150, 180], undefined],
  ])("%j", (values, expected) => expect(bounds(...values)).toEqual(expected));

  test("fewer than three bound nothing", () => expect(bounds(200, 200)).toBeUndefined());

  test("a window has none", () => expect(assessed([140, 140, 140, 140, 140]).sets[0].bounds).toBeUndefined());

  test("above the gauge is higher than any number, at position 1 too, unless set aside", () => {
    const readings = (first: object) => [
      { id: "a", ...first },
      { id: "b", systolic_mmhg: 185 },
      { id: "c", systolic_mmhg: 190 },
    ];
    expect(assessed([], { readings: readings(above) }).sets[0].bounds).toEqual({ at_least_mmhg: 180 });
    expect(assessed([], { readings: readings({ ...above, set_aside: "moved" }) }).sets[0].bounds).toBeUndefined();
    expect(bounds(above, above, above)).toEqual({ at_least_mmhg: 180 });
    expect(bounds(150, above, 150)).toEqual({ at_least_mmhg: 140 });
  });

  test("only the latest 7 are looked at", () => {
    expect(bounds(100, 200, 260, 200, 260, 200, 260, 200)).toEqual({ at_least_mmhg: 180 });
    expect(bounds(200, 100, 260, 200, 260, 200, 260, 200)).toBeUndefined();
  });
});

describe("height, dogs only, beyond 100 mm either way", () => {
  const height = (cuff_above_heart_mm: number, species: "dog" | "cat" = "dog") =>
    assessed([150, 150, 150, 150, 150], { cuff_above_heart_mm }, { species }).sets[0].height;
  test("nothing up to 100 mm", () => {
    expect(height(100)).toBeUndefined();
    expect(height(-100)).toBeUndefined();
  });
  // A column of blood of 1 cm is 0.77 to 0.78 mmHg (density 1.05 to 1.06 g/ml, 1 mmHg = 13.5951 mm water, definition);
  // the rule's published 0.8 mmHg per cm lies within half a tenth of it.
  test("8 hundredths a mm over the whole distance", () => {
    expect(height(101)).toEqual({ correction_hundredths_mmhg: 808, corrected_mean_tenths_mmhg: 1581 });
    expect(height(-101)).toEqual({ correction_hundredths_mmhg: -808, corrected_mean_tenths_mmhg: 1419 });
  });
  test("never a cat", () => expect(height(200, "cat")).toBeUndefined());
  test("nothing eligible: none", () => {
    expect(assessed([], { cuff_above_heart_mm: 200 }).sets[0].height).toBeUndefined();
  });
  test("without a window over all eligible", () => {
    expect(assessed([150], { cuff_above_heart_mm: 150 }).sets[0].height?.corrected_mean_tenths_mmhg).toBe(1620);
  });
});
