/* Rule 2, from shared_schemas/rules/README.md: the first reason that applies, limits possible, equal values not. */
import { expect, test } from "vitest";
import { standingsOf } from "../../../client/src/rules/standing.ts";
import { DOCUMENTS, readings } from "./make.ts";

const { standing } = DOCUMENTS;
const second = (reading: object): string => standingsOf(readings(120, reading), standing)[1];

test.each([
  [{ systolic_mmhg: 19 }, "impossible"],
  [{ systolic_mmhg: 20 }, "eligible"],
  [{ systolic_mmhg: 300 }, "eligible"],
  [{ systolic_mmhg: 301 }, "impossible"],
  [{ systolic_mmhg: 200, mean_mmhg: 19 }, "impossible"],
  [{ systolic_mmhg: 200, mean_mmhg: 20 }, "eligible"],
  [{ systolic_mmhg: 290, mean_mmhg: 250 }, "eligible"],
  [{ systolic_mmhg: 290, mean_mmhg: 251 }, "impossible"],
  [{ systolic_mmhg: 200, diastolic_mmhg: 9 }, "impossible"],
  [{ systolic_mmhg: 200, diastolic_mmhg: 10 }, "eligible"],
  [{ systolic_mmhg: 290, diastolic_mmhg: 200 }, "eligible"],
  [{ systolic_mmhg: 290, diastolic_mmhg: 201 }, "impossible"],
  [{ systolic_mmhg: 120, mean_mmhg: 120 }, "impossible"],
  [{ systolic_mmhg: 120, mean_mmhg: 90, diastolic_mmhg: 90 }, "impossible"],
  [{ systolic_mmhg: 120, diastolic_mmhg: 120 }, "impossible"],
  [{ systolic_mmhg: 120, diastolic_mmhg: 119 }, "eligible"],
  [{ systolic_mmhg: 120, mean_mmhg: 90, diastolic_mmhg: 89 }, "eligible"],
  [{ beyond: "no_sound" }, "no_number"],
  [{ beyond: "above_gauge", set_aside: "moved" }, "by_hand"],
  [{ systolic_mmhg: 999, set_aside: "moved" }, "by_hand"],
])("%j is %s", (reading, expected) => expect(second(reading)).toBe(expected));

test("only position 1 is dropped as the first, whatever became of it", () => {
  expect(standingsOf(readings(120, 121), standing)).toEqual(["first", "eligible"]);
  const aside = { systolic_mmhg: 120, set_aside: "moved" };
  expect(standingsOf(readings(aside, 121), standing)).toEqual(["by_hand", "eligible"]);
  expect(standingsOf(readings({ beyond: "no_value" }, 121), standing)).toEqual(["no_number", "eligible"]);
  expect(standingsOf(readings(301, 121), standing)).toEqual(["impossible", "eligible"]);
  expect(standingsOf([], standing)).toEqual([]);
});
