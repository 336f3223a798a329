/* Rule 3, worked by hand from shared_schemas/rules/README.md: window, verdicts, suspects, irregular rhythm, advice. */
import { describe, expect, test } from "vitest";
import { assessed } from "./make.ts";

const verdict = (...values: Parameters<typeof assessed>[0]) => assessed(values).sets[0];
const counted = (...values: Parameters<typeof assessed>[0]): string[] =>
  (assessed(values).sets[0].readings ?? []).filter(({ standing }) => standing === "counted").map(({ id }) => id);

test("below 5 too few, with what is missing; all of them provisional", () => {
  expect(verdict(140, 140, 140, 140)).toMatchObject({ verdict: "too_few", readings_needed: 1 });
  expect(verdict()).toMatchObject({ verdict: "too_few", readings_needed: 5 });
  expect(verdict(140).readings).toEqual([
    { id: "r1", standing: "first" },
    { id: "r2", standing: "provisional" },
  ]);
});

describe("even: (max − min) / mean at most 200 permille", () => {
  // 90 100 100 100 110: range 20, mean 100, exactly 200 permille; rising, so that the fall test stays out of it.
  test("at the limit", () => expect(verdict(90, 100, 100, 100, 110).verdict).toBe("steady"));
  // 90 100 100 99 111: range 21, mean 100.
  test("above it", () => expect(verdict(90, 100, 100, 99, 111).verdict).toBe("scattered"));
});

describe("no longer falling: by at most 2 mmHg or 20 permille", () => {
  // At low values only the limit in mmHg matters, at high ones only the permille.
  // 52 52 51 50 50: d = 2, mean 51, 39 permille; only the 2 mmHg lets it pass.
  test("2 mmHg at low values", () => expect(verdict(52, 52, 51, 50, 50).verdict).toBe("steady"));
  // 52 53 51 50 50: d = 2.5 of 51.2 is 49 permille.
  test("2.5 mmHg at low values", () => expect(verdict(52, 53, 51, 50, 50).verdict).toBe("falling"));
  // 202 202 200 198 198: d = 4, mean 200, exactly 20 permille.
  test("20 permille at high values", () => expect(verdict(202, 202, 200, 198, 198).verdict).toBe("steady"));
  // 203 202 200 198 197: d = 5 of 200 is 25 permille.
  test("25 permille at high values", () => expect(verdict(203, 202, 200, 198, 197).verdict).toBe("falling"));
  test("rising is not falling", () => expect(verdict(130, 132, 136, 138, 140).verdict).toBe("steady"));
});

describe("window: the latest 5, then 6 and 7, stopping at the first that fails", () => {
  test("6 and 7 taken, the eighth never", () => {
    expect(counted(140, 140, 140, 140, 140, 140, 140, 140)).toEqual(["r3", "r4", "r5", "r6", "r7", "r8", "r9"]);
  });
  test("stops at 6 although 7 would pass again", () => {
    // latest 5 are 140; the sixth makes a fall: 150 140 140 | 140 140 140, d = 10/3 of 141.7 is 23.5 permille;
    // with 130 before it: 130 150 140 | 140 140 140, d = 0 would pass.
    expect(counted(130, 150, 140, 140, 140, 140, 140)).toEqual(["r4", "r5", "r6", "r7", "r8"]);
  });
  test("those before the window are earlier", () => {
    expect(verdict(200, 140, 140, 140, 140, 140).readings?.[1]).toEqual({ id: "r2", standing: "earlier" });
  });
});

describe("suspects", () => {
  // median 140, MAD 0: limit 10 mmHg. 179 makes it uneven: range 39, mean 147.8.
  test("far from the median: named with verdict scattered", () => {
    expect(verdict(140, 140, 179, 140, 140)).toMatchObject({ verdict: "scattered", suspects: ["r4"] });
  });
  test("exactly 10 mmHg off is not far: 40 40 40 50 40 is uneven and scattered, without a suspect until 51", () => {
    expect(verdict(40, 40, 40, 50, 40)).toMatchObject({ verdict: "scattered" });
    expect(verdict(40, 40, 40, 50, 40).suspects).toBeUndefined();
    expect(verdict(40, 40, 40, 51, 40).suspects).toEqual(["r5"]);
  });
  test("4.448 MAD counts where it is more: 100 110 120 130 140 has MAD 10, limit 44.48", () => {
    expect(verdict(140, 100, 120, 130, 110).suspects).toBeUndefined();
    // 100 110 120 130 165: median 120, MAD 10, 165 is 45 off.
    expect(verdict(100, 110, 120, 130, 165).suspects).toEqual(["r6"]);
    // 164 is 44 off.
    expect(verdict(100, 110, 120, 130, 164).suspects).toBeUndefined();
  });
  test("median and MAD are those of the latest 7, not of the 5 that are named", () => {
    // 100 100 | 100 100 130 130 120: over 7 the median is 100, MAD 0, and 120, 130, 130 are more than 10 off.
    // Over the latest 5 the median would be 120, MAD 10, the limit 44.48, and none would be named.
    expect(verdict(100, 100, 100, 100, 130, 130, 120).suspects).toEqual(["r6", "r7", "r8"]);
    // An eighth before them is not looked at: 9 values would have other medians, here it changes nothing.
    expect(verdict(130, 130, 100, 100, 100, 100, 130, 130, 120).suspects).toEqual(["r8", "r9", "r10"]);
  });
  test("only the latest 5 are named", () => {
    expect(verdict(140, 140, 190, 140, 140, 140, 100).suspects).toEqual(["r4", "r8"]);
    expect(verdict(190, 140, 140, 140, 140, 140, 100).suspects).toEqual(["r8"]);
  });
  test("not shown when even and falling", () => {
    expect(verdict(155, 140, 140, 140, 139)).toMatchObject({ verdict: "falling" });
    expect(verdict(155, 140, 140, 140, 139).suspects).toBeUndefined();
  });
});

test("an attempt above the gauge hides what came before; set aside it does not", () => {
  const above = { beyond: "above_gauge" } as const;
  expect(verdict(140, 140, 140, 140, above, 140)).toMatchObject({ verdict: "too_few", readings_needed: 4 });
  // The latest of two such attempts counts.
  expect(verdict(140, above, 140, 140, above, 140)).toMatchObject({ verdict: "too_few", readings_needed: 4 });
  expect(verdict(140, 140, 140, 140, { ...above, set_aside: "noise_near" }, 140).verdict).toBe("steady");
  expect(verdict(140, 140, 140, 140, { beyond: "no_sound" }, 140).verdict).toBe("steady");
});

test("irregular rhythm: steady from 7, the latest 10 at most, no tests", () => {
  const irregular = (values: number[]) => assessed(values, {}, { rhythm: "irregular" }).sets[0];
  expect(irregular([90, 200, 90, 200, 90, 200])).toMatchObject({ verdict: "too_few", readings_needed: 1 });
  expect(irregular([90, 200, 90, 200, 90, 200, 90])).toMatchObject({ verdict: "steady", systolic: { n: 7 } });
  expect(irregular(Array.from({ length: 12 }, () => 150)).systolic?.n).toBe(10);
});

describe("advice", () => {
  const advice = (values: Parameters<typeof assessed>[0], visit = {}) => assessed(values, {}, visit).advice;
  test("go on, and from 10 inflations stop", () => {
    expect(advice([140])).toBe("go_on");
    const wild = [100, 140, 100, 140, 100, 140, 100, 140, 100];
    expect(advice(wild)).toBe("go_on");
    expect(advice([...wild, 140])).toBe("stop_today");
    expect(advice([...wild, { beyond: "above_gauge" }])).toBe("stop_today");
    expect(advice([...wild, { beyond: "above_gauge", set_aside: "moved" }])).toBe("go_on");
  });
  test("bounds of 180 are enough, before anything else", () => expect(advice([180, 240, 200])).toBe("enough"));
  test("second look at 140 or more after a short rest", () => {
    const rest = (rest_s: number | undefined) => ({ rest_s });
    expect(advice([140, 140, 140, 140, 140], rest(599))).toBe("second_look");
    expect(advice([140, 140, 140, 140, 140], rest(600))).toBeUndefined();
    expect(advice([140, 140, 140, 140, 140], rest(undefined))).toBe("second_look");
    expect(advice([140, 140, 140, 140, 139], rest(0))).toBeUndefined();
  });
  test("a pause of 600 s between two successive eligible readings was the second look", () => {
    const timed = (pause: number) =>
      [0, 60, 120, 120 + pause, 180 + pause].map((taken_s) => ({ systolic_mmhg: 150, taken_s }));
    expect(advice(timed(599), { rest_s: 0 })).toBe("second_look");
    expect(advice(timed(600), { rest_s: 0 })).toBeUndefined();
  });
});
