/*
 * Sentences about what was measured: whole phrases, and "every reading" only where it holds for every number taken.
 * Edges 140, 160, 180 are those of the shipped documents; each series is worked by hand.
 */
import { expect, it } from "vitest";
import { resultLine } from "../../../../client/src/screens/measure/both_results.tsx";
import { judged } from "../../../../client/src/screens/measure/judged.ts";
import { setNow, started, type Open, type Reading } from "../../../../client/src/screens/measure/open.ts";
import { boundsOf, meanLine, meanLines, phraseOf, resultSetOf, saying, shapesLine, verdictLine } from "../../../../client/src/screens/measure/wording.ts";
import { workedHere } from "../../../../client/src/screens/measure/worked_here.ts";

function taken(...values: (number | "above_gauge")[]): Open {
  const open = started({ id: "0", now_ms: 1_700_000_000_000, species: "dog", method: "doppler" });
  const readings = values.map((value, n): Reading =>
    typeof value === "number" ? { id: String(n), systolic_mmhg: value } : { id: String(n), beyond: value });
  return { ...open, measurement: { ...open.measurement, sets: [{ method: "doppler", readings }] } };
}

const bounds = (open: Open): string | undefined => boundsOf(resultSetOf(judged(open)), setNow(open).readings);

it("says every reading only of every reading", () => {
  expect(bounds(taken(190, 250, "above_gauge", 200, 245, 190, "above_gauge", 230))).toBe("Every reading was 180 or above.");
  // the first does not count and lies below: the six after it hold, every reading does not
  expect(bounds(taken(150, 250, "above_gauge", 200, 245, 190, 230))).toBe("Each of the latest 6 readings that may count was 180 or above.");
});

it("breaks through while measuring when the bound alone is enough to act on", () => {
  const open = taken(190, 250, "above_gauge", 200, 245, 190, "above_gauge", 230);
  expect(verdictLine(judged(open), 0, open)).toBe("Every reading was 180 or above.");
});

it("says from where readings are counted anew, and that what lies above the gauge is not in the mean", () => {
  const open = taken(150, 146, "above_gauge", 150);
  expect(verdictLine(judged(open), 0, open)).toBe("Above gauge: 4 more");
  expect(meanLines(resultSetOf(judged(open)), setNow(open).readings)[0]).toContain("1 attempt above the gauge is not in it");
  // the first does not count: (146 + 150) / 2
  expect(meanLine(resultSetOf(judged(open)))).toBe("148 mmHg, for orientation only: too few readings.");
});

it("says what was above the gauge where there is no mean at all, and names only the shapes that occur", () => {
  const open = taken("above_gauge", "above_gauge");
  expect(meanLines(resultSetOf(judged(open)), setNow(open).readings)).toEqual(["2 readings were above the gauge."]);
  expect(shapesLine(setNow(open).readings)).toBe("Triangle: above the gauge.");
  const none: Reading = { id: "9", beyond: "no_sound" };
  expect(shapesLine([none])).toBe("Dash: no number.");
  expect(shapesLine([...setNow(open).readings, none])).toBe("Triangle: above the gauge. Dash: no number.");
  expect(shapesLine(setNow(taken(142, 144)).readings)).toBe("");
});

it("asks about numbers out of order with the numbers, and no others", () => {
  const asked = (facts: Record<string, number>): string => saying({ word: "impossible-order", facts });
  const rest = "Systolic must be above mean, and mean above diastolic. As it is, it is kept and does not count.";
  expect(asked({ systolic: 120, mean: 130, diastolic: 85 })).toBe(`Systolic 120, mean 130, diastolic 85 mmHg. ${rest}`);
  expect(asked({ systolic: 120, diastolic: 185 })).toBe(`Systolic 120, diastolic 185 mmHg. ${rest}`);
  expect(asked({ systolic: 120, mean: 130 })).toBe(`Systolic 120, mean 130 mmHg. ${rest}`);
  expect(asked({})).toBe(rest);
});

it("tells a visit by its bound where there is one, and no mean beside it", () => {
  const line = (open: Open): string => resultLine(judged(open), open.measurement);
  expect(line(taken(190, 250, "above_gauge", 200, 245, 190, "above_gauge", 230))).toBe("Every reading was 180 or above. Not placed in a risk band.");
  // the first does not count: 720 / 5 = 144
  expect(line(taken(150, 146, 143, 145, 142, 144))).toBe("low risk of organ damage (140–159), mean 144 mmHg");
  expect(line(taken(150, 146, 150))).toBe("Not placed in a risk band; 148 mmHg for orientation only");
});

it("never calls a low pressure a minimal risk", () => {
  const assessment = judged(taken(99, 95, 96, 94, 95, 95));
  expect(phraseOf(assessment)).toBe("Not placed in a risk band");
  const set = resultSetOf(assessment);
  expect(meanLines(set, [], assessment.category_withheld).join(" ")).not.toContain("too high");
  expect(meanLines(set, []).join(" ")).toContain("too high");
  expect(workedHere("category", taken(99).measurement, assessment).join(" ")).toContain("below 100 mmHg");
});

it("says of every rule what it came to here", () => {
  const open = taken(168, 142, 138, 140, 136, 144);
  const here = (["cuff", "standing", "agreement", "averaging", "bounds", "height", "category"] as const).map((name) =>
    workedHere(name, open.measurement, judged(open)).join(" "));
  // 700 / 5 = 140; the range 8 of 140 is 5.7 %; squared deviations 40 / 4 = 10, sd 3.16
  expect(here).toEqual([
    "limb circumference or width used was not noted.", "5 of 6 readings used.", "Readings agree",
    "140 mmHg from 5 readings. They differ by 5.7% of their mean; standard deviation 3.2 mmHg.",
    "nothing to say.", "nothing to say.", "low risk of organ damage (140–159).",
  ]);
});
