/*
 * Ready?, not today, what happened before, drugs on board: what a tap puts into the document. Each document is held against the wire
 * check. Row 0 (help first at laboured breathing, collapse, a seizure): common practice.
 */
import { describe, expect, it } from "vitest";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import { CIRCUMSTANCES, noneOfThem, toggled } from "../../../../client/src/screens/measure/circumstances.ts";
import { HOURS, withDrug, withHours, withoutDrug } from "../../../../client/src/screens/measure/drugs.ts";
import { judged } from "../../../../client/src/screens/measure/judged.ts";
import { started, type Open } from "../../../../client/src/screens/measure/open.ts";
import { afterAll, asksNotToday, isNoteLong, notToday, reasonsNow, withNote } from "../../../../client/src/screens/measure/outcome.ts";
import {
  allTheSame, answered, askedAgain, helpFirst, helpNow, isReady, QUESTIONS, sedatedOnPurpose, type Question,
} from "../../../../client/src/screens/measure/ready.ts";
import { wentOn } from "../../../../client/src/screens/measure/series.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

const open = (): Open => started({ id: "0", now_ms: 1_700_000_000_000, species: "cat", method: "doppler" });
const problem = (now: Open): unknown => checkMeasurement(now.measurement as never);
const say = (now: Open, yes: boolean, ...questions: Question[]): Open => questions.reduce((one, question) => answered(one, question, yes), now);

describe("four answers", () => {
  it("fold the part with the fourth yes, in any order, and one undo brings it back", () => {
    const three = say(open(), true, "safe_to_handle", "awake", "no_pain");
    expect([three.part, isReady(three)]).toEqual(["ready", false]);
    const four = say(three, true, "breathing_easy");
    expect([four.part, isReady(four), problem(four)]).toEqual(["calm", true, undefined]);
    const [back] = undone(four);
    expect([back.part, back.measurement.ready]).toEqual(["ready", three.measurement.ready]);
  });

  it("stay where they are with a no among them", () => {
    const now = say(say(open(), true, "breathing_easy", "awake", "no_pain"), false, "safe_to_handle");
    expect([now.part, now.measurement.ready?.safe_to_handle, helpFirst(now)]).toEqual(["ready", false, undefined]);
  });

  it("are not asked is not the same as no", () => {
    expect(open().measurement).not.toHaveProperty("ready");
    expect(say(open(), false, "awake").measurement.ready).toEqual({ awake: false });
  });

  it("put help first when breathing or answering is not well, and record distress", () => {
    for (const question of ["breathing_easy", "awake"] as const) {
      const now = say(open(), false, question);
      expect([helpFirst(now), now.measurement.signs, problem(now)]).toEqual([question, ["distress"], undefined]);
      const well = say(now, true, question);
      expect([helpFirst(well), well.measurement.signs]).toEqual([undefined, undefined]);
    }
  });

  it("leave distress standing while one of the two is still a no", () => {
    const both = say(open(), false, "breathing_easy", "awake");
    expect(say(both, true, "awake").measurement.signs).toEqual(["distress"]);
    expect(askedAgain(both).measurement).not.toHaveProperty("signs");
    expect(askedAgain(say(both, true, "no_pain")).measurement.ready).toEqual({ no_pain: true });
  });

  it("let a person measure all the same, with answer and sign in the record; a new no asks again", () => {
    const same = allTheSame(say(open(), false, "breathing_easy"));
    expect([helpFirst(same), same.measurement.ready, same.measurement.signs]).toEqual([undefined, { breathing_easy: false }, ["distress"]]);
    expect(helpFirst(say(same, false, "awake"))).toBe("breathing_easy");
    expect(helpFirst(undone(same)[0])).toBe("breathing_easy");
  });

  it("know an animal that sleeps on purpose: no distress, state sedated", () => {
    const now = sedatedOnPurpose(say(open(), false, "awake"));
    expect([now.measurement.state, now.measurement.signs, helpFirst(now), problem(now)]).toEqual(["sedated", undefined, undefined, undefined]);
    expect(sedatedOnPurpose(say(open(), false, "awake", "breathing_easy")).measurement.signs).toEqual(["distress"]);
    expect(say(now, true, "breathing_easy").measurement.signs).toBeUndefined();
    expect(say(now, false, "awake").measurement.signs).toEqual(["distress"]);
  });

  it("record pain as a circumstance, and only that one", () => {
    const hurt = say(toggled(open(), "examined"), false, "no_pain");
    expect(hurt.measurement.circumstances).toEqual(["examined", "in_pain_or_ill"]);
    expect(say(hurt, true, "no_pain").measurement.circumstances).toEqual(["examined"]);
    expect(problem(hurt)).toBeUndefined();
  });
});

describe("an answer that is changed", () => {
  const circumstances = (now: Open): unknown => now.measurement.circumstances;

  it("to free of pain drops nothing that was answered by hand: none of these, or pain itself", () => {
    expect(circumstances(say(noneOfThem(open()), true, "no_pain"))).toEqual([]);
    expect(circumstances(say(toggled(open(), "in_pain_or_ill"), true, "no_pain"))).toEqual(["in_pain_or_ill"]);
    expect(circumstances(say(say(noneOfThem(open()), false, "no_pain"), true, "no_pain"))).toEqual([]);
    expect(circumstances(say(say(toggled(open(), "in_pain_or_ill"), false, "no_pain"), true, "no_pain"))).toEqual(["in_pain_or_ill"]);
  });

  it("to free of pain takes back the pain it had put there, and what was ticked by hand since stays", () => {
    const hurt = say(open(), false, "no_pain");
    expect(circumstances(say(hurt, true, "no_pain"))).toBeUndefined();
    expect(circumstances(say(toggled(hurt, "travelled"), true, "no_pain"))).toEqual(["travelled"]);
    const again = toggled(toggled(hurt, "in_pain_or_ill"), "in_pain_or_ill");
    expect(circumstances(say(again, true, "no_pain"))).toEqual(["in_pain_or_ill"]);
    expect(circumstances(say(noneOfThem(hurt), true, "no_pain"))).toEqual([]);
    expect(circumstances(say(say(say(say(noneOfThem(open()), false, "no_pain"), true, "no_pain"), false, "no_pain"), true, "no_pain"))).toEqual([]);
  });

  it("is taken back whole by one undo", () => {
    const hurt = say(noneOfThem(open()), false, "no_pain");
    expect(undone(say(hurt, true, "no_pain"))[0]).toEqual(hurt);
    expect(circumstances(undone(hurt)[0])).toEqual([]);
  });

  it("leaves distress that was seen elsewhere", () => {
    const seen = open();
    const before: Open = { ...seen, measurement: { ...seen.measurement, signs: ["distress"] } };
    const signs = (now: Open): unknown => now.measurement.signs;
    expect(signs(say(before, true, "breathing_easy", "awake"))).toEqual(["distress"]);
    expect(signs(say(say(before, false, "breathing_easy"), true, "breathing_easy"))).toEqual(["distress"]);
    expect(signs(askedAgain(helpNow(before)))).toEqual(["distress"]);
    expect(signs(askedAgain(say(before, false, "awake")))).toEqual(["distress"]);
    expect(signs(sedatedOnPurpose(say(before, false, "awake")))).toEqual(["distress"]);
    expect(signs(askedAgain(helpNow(open())))).toBeUndefined();
    expect(signs(askedAgain(helpNow(say(open(), false, "awake"))))).toBeUndefined();
  });
});

describe("not today", () => {
  it("offers first what was answered with no, and every reason once", () => {
    expect(reasonsNow(open()).length).toBe(new Set(reasonsNow(open())).size);
    expect(reasonsNow(say(open(), false, "safe_to_handle", "no_pain")).slice(0, 2)).toEqual(["in_pain", "not_safe"]);
    expect(reasonsNow(say(open(), false, "awake"))).toHaveLength(reasonsNow(open()).length);
  });

  it("is a whole measurement with an empty set, which the rules answer without a number", () => {
    const now = withNote(notToday(asksNotToday(open()), "not_safe"), " hid behind the stove ");
    expect(now.measurement.outcome).toEqual({ kind: "not_today", why: "not_safe", note: "hid behind the stove" });
    expect([now.part, now.finished, now.sheet, problem(now)]).toEqual(["result", true, undefined, undefined]);
    const answer = judged(now);
    expect(answer.category).toBeUndefined();
    expect(answer.sets).toHaveLength(1);
    expect(answer.sets[0]?.systolic).toBeUndefined();
  });

  it("is no outcome any more for whoever measures after all", () => {
    const back = wentOn(withNote(notToday(open(), "other"), "x"));
    expect(back).toEqual(afterAll(withNote(notToday(open(), "other"), "x")));
    expect([back.measurement.outcome, back.part, back.finished]).toEqual([undefined, "ready", false]);
  });

  it("keeps a note of 200 characters, and of a longer one nothing but the text", () => {
    const fits = withNote(notToday(open(), "other"), "n".repeat(200));
    expect([fits.measurement.outcome?.note?.length, isNoteLong(fits), problem(fits)]).toEqual([200, false, undefined]);
    const long = withNote(fits, "n".repeat(201));
    expect([long.measurement.outcome, isNoteLong(long), long.texts["note"]?.length]).toEqual([{ kind: "not_today", why: "other" }, true, 201]);
  });
});

describe("what happened before", () => {
  it("is not asked, none of these, or several: three different things", () => {
    expect(open().measurement).not.toHaveProperty("circumstances");
    const none = noneOfThem(open());
    expect([none.measurement.circumstances, problem(none)]).toEqual([[], undefined]);
    const all = CIRCUMSTANCES.reduce(toggled, none);
    expect([all.measurement.circumstances, problem(all)]).toEqual([CIRCUMSTANCES, undefined]);
    expect(noneOfThem(all).measurement.circumstances).toEqual([]);
  });

  it("is unanswered again when the last tick is taken away", () => {
    expect(toggled(toggled(open(), "travelled"), "travelled").measurement).not.toHaveProperty("circumstances");
    expect(noneOfThem(noneOfThem(open())).measurement).not.toHaveProperty("circumstances");
  });
});

describe("drugs on board", () => {
  const two = (): Open => withHours(withDrug(withDrug(open(), "steroid"), "beta_blocker"), 1, 6);

  it("are groups with hours or without, eight at most", () => {
    expect(two().measurement.drugs).toEqual([{ group: "steroid" }, { group: "beta_blocker", hours: 6 }]);
    const many = Array.from({ length: 9 }).reduce<Open>((now) => withDrug(now, "other"), open());
    expect([many.measurement.drugs?.length, problem(many)]).toEqual([8, undefined]);
  });

  it("go one by one, and none is no list", () => {
    expect(withoutDrug(two(), 0).measurement.drugs).toEqual([{ group: "beta_blocker", hours: 6 }]);
    expect(withHours(two(), 1, undefined).measurement.drugs?.[1]).toEqual({ group: "beta_blocker" });
    expect(withoutDrug(withoutDrug(two(), 0), 0).measurement).not.toHaveProperty("drugs");
  });

  it("have hours the wire document takes", () => {
    for (const hours of HOURS) expect(problem(withHours(two(), 0, hours))).toBeUndefined();
  });
});
