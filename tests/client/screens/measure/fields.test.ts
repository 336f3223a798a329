/*
 * Text fields of set-up and cuff: what is understood, and what is said when nothing can be. Values worked by hand.
 */
import { describe, expect, it } from "vitest";
import { problemsOf, readBag, withField, type FieldId } from "../../../../client/src/screens/measure/fields.ts";
import { ageInMonths, setNow, started, type Open } from "../../../../client/src/screens/measure/open.ts";

const open = (): Open => started({ id: "0", now_ms: 1_700_000_000_000, species: "cat", method: "doppler" });
const word = (field: FieldId, text: string): string | undefined => problemsOf(withField(open(), field, text))[0]?.saying.word;

describe("limb circumference", () => {
  it.each([["13", 130], ["13.5", 135], ["13,5 cm", 135], ["130 mm", 130], ["130", 130], ["39", 390], ["40", 40], ["١٣", 130], ["39 mm", 39]])(
    "%s is %i mm", (text, mm) => {
      expect(setNow(withField(open(), "circumference", text)).limb_circumference_mm).toBe(mm);
    });

  it.each([["thirteen", "ask-number"], ["13 in", "ask-unit"], ["200 cm", "ask-range"], ["-13", "ask-number"], ["0", "ask-range"]])(
    "%s is not guessed at", (text, asked) => {
      expect(word("circumference", text)).toBe(asked);
      expect(setNow(withField(open(), "circumference", text)).limb_circumference_mm).toBeUndefined();
    });

  it("keeps wrong text as typed, and takes the value away that stood there", () => {
    const wrong = withField(withField(open(), "circumference", "13"), "circumference", "13 in");
    expect(wrong.texts["circumference"]).toBe("13 in");
    expect(setNow(wrong)).not.toHaveProperty("limb_circumference_mm");
  });
});

describe("other fields", () => {
  it("quiet time is kept in seconds, and an empty field is no problem", () => {
    expect(withField(open(), "rest", "7").measurement.rest_s).toBe(420);
    expect(withField(open(), "rest", "7.5").measurement.rest_s).toBe(450);
    expect(withField(open(), "rest", "90 s").measurement.rest_s).toBe(90);
    expect(problemsOf(withField(open(), "rest", ""))).toEqual([]);
  });

  it("a distance below the heart is negative", () => {
    const below = { ...open(), texts: { height_side: "below" } };
    expect(setNow(withField(below, "height", "12")).cuff_above_heart_mm).toBe(-120);
    expect(setNow(withField(open(), "height", "12")).cuff_above_heart_mm).toBe(120);
  });

  it("a bag is read in any order, once each", () => {
    expect(readBag("30, 20;25 25\n40")).toEqual({ widths: [20, 25, 30, 40] });
    expect(readBag("20 mm, 2.5 cm, ٣٠")).toEqual({ widths: [20, 25, 30] });
  });

  it.each([["twenty"], ["-25"], ["1e2"], ["0x20"], ["20."], ["2.5"], ["0"], ["501"], ["60 cm"]])("a bag with %s in it is not guessed at", (text) => {
    expect(readBag(`30, ${text}`)).toEqual({ widths: [30], unread: text });
    const typed = { ...open(), texts: { bag: `30, ${text}` } };
    expect(problemsOf(typed).map(({ field, saying }) => [field, saying.word])).toEqual([["bag", "ask-bag"]]);
  });

  it.each<[FieldId, string, string]>([
    ["rest", "1,000", "ask-ambiguous"], ["circumference", "1.234", "ask-ambiguous"], ["width", "35.5", "ask-whole"],
    ["hours", "2.4", "ask-whole"], ["age", "3 furlongs", "ask-unit"], ["age", "51", "ask-range"],
  ])("%s %s asks again", (field, text, asked) => {
    expect(word(field, text)).toBe(asked);
  });

  it("age is read with its unit, and its range is said in the unit chosen", () => {
    expect(withField(open(), "age", "3 y").measurement.age_months).toBe(36);
    expect(problemsOf(withField(open(), "age", "51"))[0]?.saying.facts).toMatchObject({ least: "0", most: "50" });
  });

  it("age in whole months, on the day and the day before", () => {
    const day = (text: string): number => Date.parse(text) / 86_400_000;
    expect(ageInMonths(day("2022-11-15"), Date.parse("2023-11-14T12:00Z"))).toBe(11);
    expect(ageInMonths(day("2022-11-15"), Date.parse("2023-11-15T12:00Z"))).toBe(12);
    expect(ageInMonths(day("2024-01-01"), Date.parse("2023-11-15T12:00Z"))).toBeUndefined();
  });
});
