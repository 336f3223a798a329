/* Arithmetic of the rules, against definitions and published worked examples. */
import { describe, expect, test } from "vitest";
import {
  floorDivide,
  halfUp,
  integerSquareRoot,
  isWithin,
  meanOf,
  rangeOf,
  twiceMedian,
} from "../../../client/src/rules/whole_numbers.ts";

describe("floor division goes towards minus infinity (definition of floor)", () => {
  test.each([
    [7, 2, 3],
    [-7, 2, -4],
    [7, -2, -4],
    [-7, -2, 3],
    [-8, 2, -4],
    [-1, 1000, -1],
    [0, 5, 0],
  ])("%i / %i = %i", (num, den, expected) => expect(floorDivide(num, den)).toBe(expected));

  test("is exact where a float quotient is not: (2^53 − 1) / 2", () => {
    expect(floorDivide(9007199254740991, 2)).toBe(4503599627370495);
  });

  test("refuses zero", () => expect(() => floorDivide(1, 0)).toThrow(RangeError));
});

test.each([
  [1, 2, 1],
  [-1, 2, 0],
  [-3, 2, -1],
  [5, 3, 2],
  [4, 3, 1],
  [149, 100, 1],
  [150, 100, 2],
])("half up of %i / %i is %i", (num, den, expected) => expect(halfUp(num, den)).toBe(expected));

test("the square root is the largest whole number whose square is not above: below, at and above squares", () => {
  for (const root of [1n, 2n, 20n, 94906265n, 94906267n, 3037000500n, 10n ** 18n]) {
    expect(integerSquareRoot(root * root - 1n)).toBe(root - 1n);
    expect(integerSquareRoot(root * root)).toBe(root);
    expect(integerSquareRoot(root * root + 1n)).toBe(root);
  }
  expect(integerSquareRoot(0n)).toBe(0n);
  expect(() => integerSquareRoot(-1n)).toThrow(RangeError);
});

test("median: the textbook example 1 1 2 2 4 6 9 has median 2 and MAD 1 (common textbook example, from memory)", () => {
  const values = [9, 1, 2, 6, 1, 4, 2];
  expect(twiceMedian(values)).toBe(4);
  expect(twiceMedian(values.map((value) => Math.abs(value - 2)))).toBe(2);
});

test("median of an even count is the mean of the middle two, doubled", () => {
  expect(twiceMedian([10, 1, 4, 7])).toBe(11);
  expect(twiceMedian([100, 20])).toBe(120);
  expect(twiceMedian([5])).toBe(10);
});

test("nothing has no mean and no median", () => {
  expect(() => meanOf([])).toThrow(RangeError);
  expect(() => twiceMedian([])).toThrow(RangeError);
});

test("range, and limits that belong to the range", () => {
  expect(rangeOf([5])).toBe(0);
  expect(rangeOf([3, 9, 4])).toBe(6);
  expect([19, 20, 30, 31].map((value) => isWithin(value, [20, 30]))).toEqual([false, true, true, false]);
});
