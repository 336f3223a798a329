/*
 * How many more is always said while readings are taken, and what is said of attempts without a number. Worked by hand from rule set v1.
 */
import { describe, expect, it } from "vitest";
import { judged } from "../../../../client/src/screens/measure/judged.ts";
import { setNow, type Open } from "../../../../client/src/screens/measure/open.ts";
import { lacksNumbers } from "../../../../client/src/screens/measure/seen.tsx";
import { moreLine, verdictLine } from "../../../../client/src/screens/measure/wording.ts";
import { taken } from "./taken.ts";

const said = (open: Open): string => [verdictLine(judged(open), 0, open), moreLine(judged(open), 0, setNow(open).readings)].filter(Boolean).join(" | ");

describe("how many more", () => {
  it.each([
    [[], "No readings yet | The first does not count, then at least 5 more."],
    [[168], "Too few: 5 more needed"],
    [[168, 142, 138, 140, 136], "Too few: 1 more needed"],
    // 138 + 137 + 138 + 137 + 138 = 688, / 5 = 137.6: below 140, nothing to look at twice
    [[140, 138, 137, 138, 137, 138], "Readings agree | No more needed."],
    // 760 / 5 = 152, and no quiet time was noted
    [[158, 151, 153, 150, 154, 152], "Readings agree | Second look?"],
    // halves of 170 160 150 145 140: 165 and 142.5
    [[180, 170, 160, 150, 145, 140], "Coming down: go on until they agree | At least 1 more."],
    [[190, 250, "above_gauge", 200, 245, 190, "above_gauge", 230], "Every reading was 180 or above."],
  ] as const)("%o", (values, expected) => {
    expect(said(taken([...values]))).toBe(expected);
  });

  it("is nothing once the animal had enough", () => {
    // eleven, far apart, the first not counted: ten inflations
    const open = taken([150, 120, 180, 120, 180, 120, 180, 120, 180, 120, 180]);
    expect(said(open)).toContain("Stop for today.");
  });
});

describe("attempts without a number", () => {
  it.each([
    [["no_sound", "no_sound"], false],
    [["no_sound", "no_sound", "no_sound"], true],
    [["no_sound", 140, "no_sound", "no_sound"], false],
    [[140, "no_value", "no_value", "no_value"], true],
    [["above_gauge", "above_gauge", "above_gauge"], false],
  ] as const)("%o are asked about: %s", (values, asked) => {
    expect(lacksNumbers(setNow(taken([...values])).readings)).toBe(asked);
  });
});
