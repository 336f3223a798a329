/*
 * What was set aside, and what the result would be with it: asked of a copy, and labelled as not the result. Means worked by hand.
 */
import { expect, it } from "vitest";
import { judged } from "../../../../client/src/screens/measure/judged.ts";
import { assessedPutBack, setAsideOf, withAllPutBack } from "../../../../client/src/screens/measure/put_back.ts";
import { putBackLine } from "../../../../client/src/screens/measure/set_aside_lines.tsx";
import { taken } from "./taken.ts";

const FIRST = 150;

it("counts what was set aside in the other result alone", () => {
  const { measurement } = taken([FIRST, 138, 139, 138, 139, [150, "moved"], 138]);
  // without 150: 138 + 139 + 138 + 139 + 138 = 692, / 5 = 138.4, minimal; with it 842 / 6 = 140.33, low
  const before = JSON.stringify(measurement);
  expect(judged({ measurement } as never)).toMatchObject({ category: "minimal" });
  expect(assessedPutBack(measurement)).toMatchObject({ category: "low", sets: [{ systolic: { n: 6, mean_tenths_mmhg: 1403 } }] });
  expect(JSON.stringify(measurement)).toBe(before);
  expect(putBackLine(measurement)).toBe(
    "With all of these put back (this is not the result): 140.3 mmHg from 6 readings. low risk of organ damage (140–159).");
});

it("says why there would be no band", () => {
  // 190 among 136 to 144: (190 - 136) / 148.3 is more than a fifth
  const line = putBackLine(taken([168, 142, 138, 140, 136, 144, [190, "moved"]]).measurement);
  expect(line).toContain("(this is not the result)");
  expect(line).toContain("The readings are too scattered to place it.");
});

it("names every one of them, in the order taken, and says nothing where there is none", () => {
  const { measurement } = taken([[150, "moved"], 140, [190, "noise_near"]]);
  expect(setAsideOf(measurement).map(({ set, reading }) => [set, reading.systolic_mmhg, reading.set_aside])).toEqual([
    [0, 150, "moved"], [0, 190, "noise_near"],
  ]);
  expect(withAllPutBack(measurement).sets[0]?.readings.some((reading) => "set_aside" in reading)).toBe(false);
  expect(putBackLine(taken([150, 140]).measurement)).toBeUndefined();
});
