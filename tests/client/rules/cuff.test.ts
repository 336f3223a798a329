/* Rule 1, worked by hand from shared_schemas/rules/README.md: fit on the exact share, choice from a bag. */
import { describe, expect, test } from "vitest";
import { chooseCuff, cuffFit } from "../../../client/src/rules/cuff.ts";
import { DOCUMENTS } from "./make.ts";

const { cuff } = DOCUMENTS;

describe("fit at the limits, circumference 1000 mm so that a mm is a permille", () => {
  test.each([
    ["dog", 299, "poor", "reads_high"],
    ["dog", 300, "usable", "reads_high"],
    ["dog", 349, "usable", "reads_high"],
    ["dog", 350, "good", undefined],
    ["dog", 450, "good", undefined],
    ["dog", 451, "usable", "reads_low"],
    ["dog", 500, "usable", "reads_low"],
    ["dog", 501, "poor", "reads_low"],
    ["cat", 249, "poor", "reads_high"],
    ["cat", 250, "usable", "reads_high"],
    ["cat", 300, "good", undefined],
    ["cat", 400, "good", undefined],
    ["cat", 401, "usable", "reads_low"],
    ["cat", 500, "usable", "reads_low"],
    ["cat", 501, "poor", "reads_low"],
  ] as const)("%s %i: %s", (species, width, fit, expected) => {
    const found = cuffFit(species, 1000, width, cuff);
    expect([found.fit, found.expect]).toEqual([fit, expected]);
  });
});

test("the share is judged exactly: 50 of 111 mm shows 450 permille but is 450.45, hence no longer good", () => {
  expect(cuffFit("dog", 111, 50, cuff)).toEqual({
    target_tenths_mm: 444,
    share_permille: 450,
    fit: "usable",
    expect: "reads_low",
  });
});

test("target half up: a cat's 83 mm x 350 permille is 29.05 mm", () => {
  expect(cuffFit("cat", 83, 30, cuff).target_tenths_mm).toBe(291);
});

describe("choice from a bag", () => {
  test("a better fit wins over the larger: dog 100, target 40, 38 good against 46 usable", () => {
    expect(chooseCuff("dog", 100, [46, 38], cuff)).toMatchObject({ choice_mm: 38, fit: "good" });
  });

  test("a better fit wins over the smaller: dog 100, 34 usable against 45 good", () => {
    expect(chooseCuff("dog", 100, [34, 45], cuff)).toMatchObject({ choice_mm: 45, fit: "good" });
  });

  test("between two of equal fit the larger from 333 permille of the gap on", () => {
    // Circumference 25 m, target 10 000 mm, gap 1000 mm: (10 000 − 9 667) · 1000 = 333 · 1000 takes the larger, one mm nearer the smaller.
    expect(chooseCuff("dog", 25_000, [9_667, 10_667], cuff)).toMatchObject({ choice_mm: 10_667 });
    expect(chooseCuff("dog", 25_000, [9_668, 10_668], cuff)).toMatchObject({ choice_mm: 9_668 });
    expect(chooseCuff("dog", 1000, [350, 450], cuff)).toMatchObject({ choice_mm: 450 });
  });

  test("a width exactly at the target is the smaller candidate and is taken", () => {
    expect(chooseCuff("dog", 100, [40, 45], cuff)).toMatchObject({ choice_mm: 40, share_permille: 400 });
  });

  test("only one candidate at either end", () => {
    expect(chooseCuff("dog", 100, [45, 60], cuff)).toMatchObject({ choice_mm: 45 });
    const narrow = { choice_mm: 30, fit: "usable", expect: "reads_high" };
    expect(chooseCuff("dog", 100, [20, 30], cuff)).toMatchObject(narrow);
  });

  test("a poor winner is no choice", () => {
    expect(chooseCuff("dog", 100, [20, 60], cuff)).toEqual({ target_tenths_mm: 400, no_fit: true });
  });

  test("an empty bag is an error", () => expect(() => chooseCuff("dog", 100, [], cuff)).toThrow());

  test("an unknown word under choices raises", () => {
    const strange = { ...cuff, choices: { of_equal_fit: "smaller" } };
    expect(() => chooseCuff("dog", 100, [38, 42], strange)).toThrow(/unknown choice/);
  });
});
