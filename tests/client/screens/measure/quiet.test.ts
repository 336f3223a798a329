/*
 * The quiet time of a visit: a start, a need and the time now, nothing that runs. Times worked by hand; the needs here are
 * invented but for the one test that reads the rule document.
 */
import { describe, expect, it } from "vitest";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import { stepBetween } from "../../../../client/src/parts/now.ts";
import { withField } from "../../../../client/src/screens/measure/fields.ts";
import { limits, RULES } from "../../../../client/src/screens/measure/judged.ts";
import { draftOf, openOf, started, type Open } from "../../../../client/src/screens/measure/open.ts";
import { digit } from "../../../../client/src/screens/measure/pad.ts";
import {
  clockOf, done_permille, left_s, quietGoesOn, quietNow, quietStarted, quietStopped, readyAt_ms, stepOf_s, waited_s, withQuiet, withSteps,
} from "../../../../client/src/screens/measure/quiet.ts";
import { added, attempted, secondLook } from "../../../../client/src/screens/measure/series.ts";
import { quietNeed_s } from "../../../../client/src/screens/measure/quiet_need.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

const T0 = 1_700_000_000_000;
const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
const open = (): Open => started({ id: "0", now_ms: T0, species: "cat", method: "doppler" });
const runs = (): Open => quietStarted(open(), T0 + 1000, 600);
const quietOf = (now: Open): NonNullable<Open["quiet"]> => {
  if (!now.quiet) throw new Error("no quiet time");
  return now.quiet;
};

/** *Add* with this number on the pad, at this time. */
function withReading(now: Open, systolic: string, at_ms: number): Open {
  const pad = [...systolic].reduce((one, key) => digit(one, key, ["systolic"]), now.pad);
  return added({ ...now, pad }, at_ms, `r${at_ms}`, limits());
}

describe("what is left", () => {
  const quiet = { from_ms: T0, need_s: 600 };

  it("counts down below, at and above the need", () => {
    expect([0, 1, 599_001, 599_999, 600_000, 600_001, 7 * HOUR_MS].map((ms) => left_s(quiet, T0 + ms))).toEqual([600, 600, 1, 1, 0, 0, 0]);
    expect([0, 300_000, 599_999, 600_000, HOUR_MS].map((ms) => done_permille(quiet, T0 + ms))).toEqual([0, 500, 999, 1000, 1000]);
  });

  it("is ready at a time of the clock, and waits on beyond it", () => {
    expect(readyAt_ms(quiet)).toBe(T0 + 600_000);
    expect(waited_s(quiet, T0 + 3 * HOUR_MS + 999)).toBe(10_800);
  });

  it("reads as minutes and seconds, from an hour on with hours", () => {
    expect([0, 5, 462, 3599, 3600, 3725].map(clockOf)).toEqual(["0:00", "0:05", "7:42", "59:59", "1:00:00", "1:02:05"]);
  });

  it("takes its need from the rule document", () => {
    const { cat, dog } = RULES.documents.cautions.numbers.rest_short_s;
    expect([quietNeed_s("cat"), quietNeed_s("dog")]).toEqual([cat, dog]);
  });
});

describe("a page that was killed or hidden", () => {
  it("finds the same remaining time, since nothing but the start is kept", () => {
    const killed = openOf(JSON.parse(JSON.stringify(draftOf(runs(), T0 + 2000))));
    expect(left_s(quietOf(killed), T0 + 1000 + 7 * MINUTE_MS)).toBe(180);
  });

  it("does not bring a quiet time of another day back", () => {
    const now = runs();
    const ready_ms = readyAt_ms(quietOf(now));
    expect(quietNow(now, ready_ms + 4 * HOUR_MS)).toEqual(now.quiet);
    expect(quietNow(now, ready_ms + 4 * HOUR_MS + 1)).toBeUndefined();
  });
});

describe("the first reading", () => {
  it("writes down what was really waited, and one undo takes both back", () => {
    const read = withReading(runs(), "152", T0 + 1000 + 7 * MINUTE_MS + 900);
    expect(read.measurement.rest_s).toBe(420);
    expect(checkMeasurement(read.measurement as never)).toBeUndefined();
    const [back] = undone(read);
    expect(back.measurement).not.toHaveProperty("rest_s");
    expect(withReading(back, "150", T0 + 1000 + 9 * MINUTE_MS).measurement.rest_s).toBe(540);
  });

  it("may be an attempt without a number", () => {
    expect(attempted(runs(), "no_sound", T0 + 61_000, "a", "").measurement.rest_s).toBe(60);
  });

  it("leaves typed minutes as they are, before or after the start", () => {
    const typed = withField(runs(), "rest", "12");
    expect(withReading(typed, "152", T0 + 61_000).measurement.rest_s).toBe(720);
  });

  it("counts until the stop, not until the reading", () => {
    const stopped = quietStopped(runs(), T0 + 1000 + 3 * MINUTE_MS);
    expect(quietNow(stopped, T0 + 4 * MINUTE_MS)).toBeUndefined();
    expect(withReading(stopped, "152", T0 + HOUR_MS).measurement.rest_s).toBe(180);
    expect(withReading(quietGoesOn(stopped), "152", T0 + 1000 + 5 * MINUTE_MS).measurement.rest_s).toBe(300);
  });

  it("says nothing where nothing is known: no quiet time, or a clock that stands before the start", () => {
    expect(withReading(open(), "152", T0 + HOUR_MS).measurement).not.toHaveProperty("rest_s");
    expect(withReading(runs(), "152", T0 - HOUR_MS).measurement).not.toHaveProperty("rest_s");
    expect(waited_s(quietOf(runs()), T0)).toBeUndefined();
  });

  it("writes down no rest since yesterday: a draft that lay overnight says nothing, run to its end or stopped", () => {
    const ready_ms = readyAt_ms(quietOf(runs()));
    expect(withReading(runs(), "152", ready_ms + 4 * HOUR_MS).measurement.rest_s).toBe(600 + 4 * 3600);
    const stopped = quietStopped(runs(), T0 + 1000 + 3 * MINUTE_MS);
    for (const left of [runs(), stopped]) {
      const read = withReading(left, "152", T0 + 20 * HOUR_MS);
      expect(read.measurement).not.toHaveProperty("rest_s");
      expect(checkMeasurement(read.measurement as never)).toBeUndefined();
    }
  });

  it("may follow a quiet time begun anew from the round: one of today stays, one of yesterday gives way", () => {
    expect(withQuiet(runs(), T0 + HOUR_MS, 300).quiet).toEqual(runs().quiet);
    expect(withQuiet(runs(), T0 + 20 * HOUR_MS, 300).quiet).toEqual({ from_ms: T0 + 20 * HOUR_MS, need_s: 300 });
  });

  it("alone does so: a second look is no quiet time before it", () => {
    const looked = secondLook(withReading(open(), "152", T0 + MINUTE_MS), T0 + 2 * MINUTE_MS, 300);
    expect(quietNow(looked, T0 + 3 * MINUTE_MS)).toEqual({ from_ms: T0 + 2 * MINUTE_MS, need_s: 300 });
    const again = withReading(looked, "148", T0 + 8 * MINUTE_MS);
    expect(again.measurement).not.toHaveProperty("rest_s");
    expect(quietNow(again, T0 + 8 * MINUTE_MS)).toBeUndefined();
  });
});

describe("the clock", () => {
  const at = (wall_ms: number, steady_ms: number) => ({ wall_ms, steady_ms });

  it("was set when wall and steady clock part by more than 2 s in sight", () => {
    expect(stepBetween(at(0, 0), at(3000, 1000), false)).toBe(0);
    expect(stepBetween(at(0, 0), at(3001, 1000), false)).toBe(2001);
    expect(stepBetween(at(10_000, 0), at(7999, 1000), false)).toBe(-3001);
  });

  it("may have slept out of sight: there only a step back is certain", () => {
    expect(stepBetween(at(0, 0), at(HOUR_MS, 1000), true)).toBe(0);
    expect(stepBetween(at(HOUR_MS, 0), at(0, 1000), true)).toBe(-HOUR_MS - 1000);
  });

  it("is told of quiet times that ran then, kept in the draft, and corrects nothing", () => {
    const step = { found_ms: T0 + 10_000, by_ms: 61_000 };
    const before = quietOf(runs());
    expect(stepOf_s(before, [step])).toBe(61);
    expect(stepOf_s({ from_ms: T0 + 10_000, need_s: 600 }, [step])).toBe(0);
    const known = withSteps(runs(), [step]);
    expect(quietOf(known)).toEqual({ ...before, step_s: 61 });
    expect(left_s(quietOf(known), T0 + 11_000)).toBe(left_s(before, T0 + 11_000));
    expect(stepOf_s(quietOf(openOf(JSON.parse(JSON.stringify(draftOf(known, T0))))), [])).toBe(61);
  });
});
