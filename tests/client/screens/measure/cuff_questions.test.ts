/*
 * Level with the heart, the unit of the limb, sites by day and by species, and what the bag says of a machine.
 * Values worked by hand; what lands in the document is held against the wire check.
 */
import { describe, expect, it } from "vitest";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import { notValidated, widthsOf } from "../../../../client/src/screens/measure/carried.ts";
import { problemsOf } from "../../../../client/src/screens/measure/fields.ts";
import { levelOf, withDistance, withLevel } from "../../../../client/src/screens/measure/height_choice.tsx";
import { limbIsRight, limbQuestion, unitOf, withLimb, withUnit } from "../../../../client/src/screens/measure/limb.ts";
import { openOf, draftOf, setNow, started, type Open } from "../../../../client/src/screens/measure/open.ts";
import { barredPlace, barredSide, barredSite, POSTURES, SITES } from "../../../../client/src/screens/measure/sites.ts";

const open = (species: "cat" | "dog" = "cat"): Open => started({ id: "0", now_ms: 1_700_000_000_000, species, method: "doppler" });
const mm = (now: Open): number | undefined => setNow(now).limb_circumference_mm;
const above = (now: Open): number | undefined => setNow(now).cuff_above_heart_mm;
const fits = (now: Open): boolean => checkMeasurement({ ...now.measurement, patient: "0123abcd-0000-7000-8000-000000000000" } as never) === undefined;

describe("level with the heart", () => {
  it.each([["level", 0], ["not_known", undefined], ["above", undefined], ["below", undefined]] as const)("%s alone is %s in the document", (level, value) => {
    const now = withLevel(open(), level);
    expect([above(now), levelOf(now), fits(now)]).toEqual([value, level, true]);
    expect("cuff_above_heart_mm" in setNow(now)).toBe(value !== undefined);
  });

  it.each([["above", "5", 50], ["above", "10", 100], ["below", "5", -50], ["below", "10", -100]] as const)("%s by %s cm is %i mm", (level, by, value) => {
    const now = withDistance(withLevel(open(), level), by);
    expect([above(now), levelOf(now), fits(now)]).toEqual([value, level, true]);
  });

  it("a distance changes its sign with the side, and goes when it is level or not known after all", () => {
    const off = withDistance(withLevel(open(), "above"), "10");
    expect(above(withLevel(off, "below"))).toBe(-100);
    expect(above(withLevel(off, "level"))).toBe(0);
    expect("cuff_above_heart_mm" in setNow(withLevel(off, "not_known"))).toBe(false);
  });

  it("not known is found again in the draft", () => {
    expect(levelOf(openOf(JSON.parse(JSON.stringify(draftOf(withLevel(open(), "not_known"), 0)))))).toBe("not_known");
    expect(levelOf(open())).toBeUndefined();
  });
});

describe("the unit of the limb", () => {
  it.each([["13", 130], ["8.5", 85], ["45", 450], ["130 mm", 130], ["13 cm", 130]])("%s, with cm chosen, is %i mm", (text, value) => {
    expect(mm(withLimb(open("dog"), text))).toBe(value);
  });

  it("is chosen by tap or by typing it, and stays chosen", () => {
    const tapped = withUnit(withLimb(open("dog"), "13"), "mm");
    expect([mm(tapped), unitOf(tapped)]).toEqual([13, "mm"]);
    expect(mm(withLimb(tapped, "130"))).toBe(130);
    const typed = withLimb(open("dog"), "130 mm");
    expect(unitOf(typed)).toBe("mm");
    expect([mm(withUnit(typed, "cm")), problemsOf(withUnit(typed, "cm")).length]).toEqual([undefined, 1]);
  });

  it("asks of 32 cm in a cat whether 32 mm was meant, and never blocks", () => {
    const now = withLimb(open(), "32");
    expect(limbQuestion(now)).toEqual({ word: "limb-large", typed: "32 cm", meant: { unit: "mm", cm: "3.2", mm: "32" } });
    expect([mm(now), problemsOf(now), fits(now)]).toEqual([320, [], true]);
    const mended = withUnit(now, "mm");
    expect([mm(mended), limbQuestion(mended)]).toEqual([32, undefined]);
    expect(limbQuestion(limbIsRight(now))).toBeUndefined();
    expect(limbQuestion(withLimb(limbIsRight(now), "33"))?.typed).toBe("33 cm");
  });

  it("asks nothing of a likely limb, and offers nothing where the other unit is no likelier", () => {
    expect(limbQuestion(withLimb(open(), "8.5"))).toBeUndefined();
    expect(limbQuestion(withLimb(open("dog"), "32"))).toBeUndefined();
    expect(limbQuestion(withLimb(open(), "8 mm"))).toEqual({ word: "limb-small", typed: "8 mm", meant: { unit: "cm", cm: "8", mm: "80" } });
    expect(limbQuestion(withLimb(open(), "1"))).toEqual({ word: "limb-small", typed: "1 cm" });
    expect(limbQuestion(withLimb(open(), "thirteen"))).toBeUndefined();
  });
});

describe("sites", () => {
  it("one side barred leaves the other; both sides, or none named, bar the site", () => {
    const left = { site: "forearm", side: "left", why: "wound" } as const;
    const right = { ...left, side: "right" } as const;
    const both = { site: "metatarsus", why: "missing" } as const;
    expect([barredSite([left], "forearm"), barredSide([left], "forearm", "left"), barredSide([left], "forearm", "right")]).toEqual([undefined, left, undefined]);
    expect(barredSite([left, right], "forearm")).toBe(right);
    expect([barredSite([both], "metatarsus"), barredSite([both], "forearm")]).toEqual([both, undefined]);
    expect(barredPlace([left], { site: "forearm", side: "left" })).toBe(left);
    expect(barredPlace([left], { site: "forearm" })).toBeUndefined();
    expect(barredPlace([{ site: "tail_base", why: "lump" }], { site: "tail_base" })).toMatchObject({ why: "lump" });
  });

  it("are offered to a cat above the elbow and in the lap first, to a dog on the forearm; none is left out", () => {
    expect([SITES.cat[0], SITES.cat[1], POSTURES.cat[0], SITES.dog[0]]).toEqual(["above_elbow", "tail_base", "in_lap", "forearm"]);
    expect([...SITES.cat].sort()).toEqual([...SITES.dog].sort());
    expect([SITES.cat.length, POSTURES.cat.length, new Set(SITES.dog).size]).toEqual([5, 5, 5]);
  });
});

describe("what the bag says", () => {
  const bag = (validated_in?: ("cat" | "dog")[]) => ({ name: "Van", machines: [{ name: "Box 2", ...(validated_in ? { validated_in } : {}) }] });
  const set = { method: "oscillometric", instrument: "Box 2", readings: [] } as const;

  it("tells a machine that is not validated for the species from one nobody knows of", () => {
    expect(notValidated(bag(["dog"]), set, "cat")?.word).toBe("validated-not-cat");
    expect(notValidated(bag([]), set, "dog")?.word).toBe("validated-not-dog");
    expect(notValidated(bag(), set, "cat")?.word).toBe("validated-unknown-cat");
    expect(notValidated(bag(["dog", "cat"]), set, "cat")).toBeUndefined();
    expect(notValidated(bag(["dog"]), { ...set, instrument: "another" }, "cat")).toBeUndefined();
    expect(notValidated(undefined, set, "cat")).toBeUndefined();
  });

  it("lists widths once each, ascending, with their marks", () => {
    expect(widthsOf({ name: "Van", cuffs: [{ width_mm: 30, mark: "blue" }, { width_mm: 20 }, { width_mm: 30, mark: "torn" }] })).toEqual([
      { width_mm: 20, marks: [] }, { width_mm: 30, marks: ["blue", "torn"] }]);
  });
});
