/* Rule 4, against published certified values, a t table and hand-worked numbers. */
import { describe, expect, test } from "vitest";
import { averagesOf } from "../../../client/src/rules/averaging.ts";
import { DOCUMENTS, assessed, readings } from "./make.ts";

const averages = (values: number[], hasWindow = true) =>
  averagesOf(readings(...values), hasWindow, DOCUMENTS.averaging).systolic;

test("NIST StRD NumAcc1 (certified: mean 10000002, SD 1; from memory): nothing is lost by cancellation", () => {
  expect(averages([10000001, 10000003, 10000002], false)).toMatchObject({
    mean_tenths_mmhg: 100000020,
    sd_tenths_mmhg: 10,
  });
});

test("the example of five: 142 138 140 136 144, SD √10 = 3.162, half width 2.776·√10/√5 = 3.926", () => {
  expect(averages([142, 138, 140, 136, 144])).toEqual({
    n: 5,
    mean_tenths_mmhg: 1400,
    sd_tenths_mmhg: 32,
    spread_permille: 57,
    ci95_half_width_tenths_mmhg: 39,
  });
});

describe("half widths for n = 5 … 10 by a table of Student's t (two-sided 95 %, any statistical table)", () => {
  test.each([
    [5, 2.776],
    [6, 2.571],
    [7, 2.447],
    [8, 2.365],
    [9, 2.306],
    [10, 2.262],
  ])("n = %i", (n, t) => {
    // n − 1 values of 100 and one of 100 + 10·n: variance 100·n exactly, so the half width is t·10 mmHg.
    const values = [...Array.from({ length: n - 1 }, () => 100), 100 + 10 * n];
    expect(averages(values)?.ci95_half_width_tenths_mmhg).toBe(Math.round(t * 100));
  });
  test("none for 4 or 11, and none without a window", () => {
    expect(averages([1, 2, 3, 4])?.ci95_half_width_tenths_mmhg).toBeUndefined();
    const eleven = Array.from({ length: 11 }, (_, index) => 100 + index);
    expect(averages(eleven)?.ci95_half_width_tenths_mmhg).toBeUndefined();
    expect(averages([1, 2, 3, 4, 5], false)?.ci95_half_width_tenths_mmhg).toBeUndefined();
  });
});

test("half up: 100 100 101 is 100.33, 100 101 is 100.5, 101 101 102 102 103 101 is 101.67", () => {
  expect(averages([100, 100, 101])?.mean_tenths_mmhg).toBe(1003);
  expect(averages([100, 101])?.mean_tenths_mmhg).toBe(1005);
  expect(averages([101, 101, 102, 102, 103, 101])?.mean_tenths_mmhg).toBe(1017);
});

test("one reading has a mean and no spread; equal ones a spread of 0", () => {
  expect(averages([137])).toEqual({ n: 1, mean_tenths_mmhg: 1370 });
  expect(averages([137, 137], false)).toMatchObject({ sd_tenths_mmhg: 0, spread_permille: 0 });
});

test("mean, diastolic and pulse over those that carry them, from the same readings", () => {
  const full = { systolic_mmhg: 140, mean_mmhg: 110, diastolic_mmhg: 90, pulse_bpm: 121 };
  const found = assessed([full, 140, 140, { ...full, diastolic_mmhg: 91, pulse_bpm: 122 }, 140]).sets[0];
  expect(found.mean).toEqual({ n: 2, mean_tenths_mmhg: 1100, sd_tenths_mmhg: 0, spread_permille: 0 });
  expect(found.diastolic).toMatchObject({ n: 2, mean_tenths_mmhg: 905, sd_tenths_mmhg: 7, spread_permille: 11 });
  expect(found.pulse).toEqual({ n: 2, mean_tenths_bpm: 1215 });
});

test("nothing eligible: no averages", () => {
  const found = assessed([{ beyond: "no_value" }]).sets[0];
  expect(Object.keys(found).sort()).toEqual(["cuff", "readings", "readings_needed", "verdict"]);
});
