/*
 * What the parts say of themselves while another one is open: what was noted, and nothing of what nobody was asked. And the words of
 * "as last time", read as one sentence. The animals are invented.
 */
import { beforeAll, describe, expect, it } from "vitest";
import { lastWords } from "../../../../client/src/screens/measure/as_last_time.tsx";
import { noneOfThem, toggled } from "../../../../client/src/screens/measure/circumstances.ts";
import { withDrug } from "../../../../client/src/screens/measure/drugs.ts";
import { withField } from "../../../../client/src/screens/measure/fields.ts";
import { leave } from "../../../../client/src/screens/measure/folds.tsx";
import { MORE_QUESTIONS, notedMore } from "../../../../client/src/screens/measure/more_noted.ts";
import { changed, inSetNow, started, toPart, type Open, type Part } from "../../../../client/src/screens/measure/open.ts";
import { problemsHere, problemsToShow } from "../../../../client/src/screens/measure/part_problems.ts";
import { quietStarted } from "../../../../client/src/screens/measure/quiet.ts";
import { answered } from "../../../../client/src/screens/measure/ready.ts";
import { moreLine, summaryOf } from "../../../../client/src/screens/measure/summary.ts";

const open = (): Open => started({ id: "0", now_ms: 1_700_000_000_000, species: "cat", method: "doppler" });
const PARTS: readonly Part[] = ["ready", "calm", "cuff", "readings", "result"];
/** Isolation marks around a number that goes into a sentence are no words. */
const plain = (words: string | undefined): string | undefined => words?.replace(/[\u2068\u2069]/g, "");

beforeAll(() => import("../../../../client/src/contract/cuff_words.ts"));

describe("a part that is folded", () => {
  it("says nothing before anything was asked", () => {
    expect(PARTS.map((part) => summaryOf(open(), part))).toEqual(PARTS.map(() => undefined));
  });

  it("says what was noted in it", () => {
    expect(plain(summaryOf(answered(open(), "no_pain", false), "ready"))).toBe("no to: free of pain");
    expect(plain(summaryOf(answered(open(), "no_pain", true), "ready"))).toBe("1 of 4 answered");
    expect(plain(summaryOf(changed(open(), "field-demeanour", ["measurement", "demeanour"], "tense"), "calm"))).toBe("Tense");
    expect(plain(summaryOf(quietStarted(open(), Date.now(), 600), "calm"))).toMatch(/^quiet since /);
    expect(plain(summaryOf(changed(open(), "field-width", inSetNow(open(), "cuff_width_mm"), 25), "cuff"))).toBe("Doppler, 25 mm cuff");
    expect(plain(summaryOf(toPart(toPart(open(), "cuff"), "readings"), "cuff"))).toBe("Doppler");
  });
});

describe("the rest of Calm", () => {
  it("says what could be noted while nothing is, and of each question only what was answered", () => {
    expect(MORE_QUESTIONS.map((question) => notedMore(open(), question))).toEqual(MORE_QUESTIONS.map(() => undefined));
    expect(plain(moreLine(open()))).toContain("place");
  });

  it("keeps none of these apart from no answer, and minutes by hand from those a reading wrote down", () => {
    expect(plain(notedMore(noneOfThem(open()), "circumstances"))).toBe("nothing in 30 min");
    expect(plain(notedMore(toggled(toggled(open(), "examined"), "travelled"), "circumstances"))).toBe("Examined, Travelled");
    expect(plain(notedMore(withDrug(open(), "steroid"), "drugs"))).toBe("1 drug");
    expect(plain(notedMore(withField(open(), "rest", "12"), "rest"))).toBe("quiet 12 min");
    const { measurement, ...rest } = open();
    expect(notedMore({ ...rest, measurement: { ...measurement, rest_s: 720 } }, "rest")).toBeUndefined();
  });
});

describe("as last time", () => {
  it("reads as one sentence: names keep their capital, places and postures do not", () => {
    const words = lastWords({ method: "doppler", site: "forearm", side: "left", limb_circumference_mm: 78, cuff_width_mm: 28, posture: "sternal", restraint: "towel", instrument: "Old Probe" });
    expect(plain(words)).toBe("Doppler, forearm, left, limb 7.8 cm, 28 mm cuff, on its chest, in a towel, Old Probe");
  });

  it("says once that it lay in the lap", () => {
    expect(plain(lastWords({ posture: "in_lap", restraint: "lap" }))).toBe("in the lap");
    expect(plain(lastWords({ posture: "sternal", restraint: "lap" }))).toBe("on its chest, in the lap");
    expect(plain(lastWords({ posture: "in_lap", restraint: "none" }))).toBe("in the lap");
  });
});

describe("what is wrong", () => {
  it("is told on its own part alone, and keeps nobody there for a second time", () => {
    const typed = withField(toPart(open(), "cuff"), "circumference", "thirteen");
    const stays = leave(typed, "readings");
    expect([stays.part, problemsHere(stays).map(({ field }) => field)]).toEqual(["cuff", ["circumference"]]);
    const elsewhere = toPart(stays, "calm");
    expect(problemsToShow(elsewhere)).toHaveLength(1);
    expect(problemsHere(elsewhere)).toEqual([]);
  });
});
