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
  clockOf, done_permille, left_s, quietGoesOn, quietNow, quietStarted, quietStopped, readyAt_ms, restPatches, waited_s, withQuiet, withSteps,
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
    expect(withQuiet(runs(), T0 + 20 * HOUR_MS, 300).quiet).toMatchObject({ from_ms: T0 + 20 * HOUR_MS, need_s: 300 });
  });

  it("alone does so: a second look is no quiet time before it", () => {
    const looked = secondLook(withReading(open(), "152", T0 + MINUTE_MS), T0 + 2 * MINUTE_MS, 300);
    expect(quietNow(looked, T0 + 3 * MINUTE_MS)).toMatchObject({ from_ms: T0 + 2 * MINUTE_MS, need_s: 300 });
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

  it("is told of quiet times that ran then, and kept in the draft", () => {
    const once = { page: 1, steps: [{ by_ms: 61_000, at_ms: T0 + 70_000 }] };
    const known = withSteps(runs(), once);
    expect(quietOf(known)).toMatchObject({ from_ms: T0 + 1000, need_s: 600, step_s: 61 });
    expect(quietOf(openOf(JSON.parse(JSON.stringify(draftOf(known, T0))))).step_s).toBe(61);
    expect(withSteps(known, { ...once, steps: [...once.steps] })).toBe(known);
  });
});

/*
 * What was waited is never overstated, whatever the clock did meanwhile. Worked by hand: real time is what passed; the wall is what the
 * phone's clock said. Minutes throughout.
 */
describe("a clock that was set in mid quiet time", () => {
  const START = T0 + 1000;
  /** By so many minutes, to so many by the wall since the start. */
  const step = (minutes: number, to_min: number) => ({ by_ms: minutes * MINUTE_MS, at_ms: START + to_min * MINUTE_MS });
  const seen = (page: number, ...steps: { by_ms: number; at_ms: number }[]) => ({ page, steps });
  /** What the first reading writes down, in minutes, when the wall says so many since the start. */
  const restOf = (open: Open, wall_min: number): number | undefined => {
    const { rest_s } = withReading(open, "152", START + wall_min * MINUTE_MS).measurement;
    return rest_s === undefined ? undefined : rest_s / 60;
  };

  it("forward by 60 after 3 real minutes: the reading at 5 real ones writes down 5, and 5 are left of 10", () => {
    const now = withSteps(runs(), seen(1, step(60, 63)));
    expect(restOf(now, 65)).toBe(5);
    expect(left_s(quietOf(now), START + 65 * MINUTE_MS)).toBe(300);
    expect(waited_s(quietOf(now), START + 65 * MINUTE_MS)).toBe(300);
    expect(done_permille(quietOf(now), START + 65 * MINUTE_MS)).toBe(500);
    expect(readyAt_ms(quietOf(now))).toBe(START + 70 * MINUTE_MS);
  });

  it("back by 4 after 6 real minutes: the reading at 8 real ones writes down the 4 that the wall shows, never more than 8", () => {
    expect(restOf(withSteps(runs(), seen(1, step(-4, 2))), 4)).toBe(4);
  });

  it("forward by mistake and back again: what passed is what counts", () => {
    expect(restOf(withSteps(runs(), seen(1, step(60, 63), step(-60, 5))), 7)).toBe(7);
  });

  it("set once on a page that was killed and once on the next: both count, each once", () => {
    const killed = withSteps(runs(), seen(1, step(30, 31)));
    const both = withSteps(withSteps(killed, seen(2, step(20, 53))), seen(2, step(20, 53)));
    expect(quietOf(both).step_s).toBe(50 * 60);
    expect(restOf(both, 55)).toBe(5);
  });

  it("set before it began: neither told nor counted, also where it was set back behind the start and forward again later", () => {
    const begun = quietStarted(open(), START, 600, seen(1, step(-60, -1)));
    expect(withSteps(begun, seen(1, step(-60, -1)))).toBe(begun);
    const forward = withSteps(begun, seen(1, step(-60, -1), step(10, 13)));
    expect(quietOf(forward).step_s).toBe(600);
    expect(restOf(forward, 15)).toBe(5);
  });

  it("of half a second beyond the second: rounded so that less was waited", () => {
    expect(quietOf(withSteps(runs(), seen(1, { by_ms: 2500, at_ms: START + 9000 }))).step_s).toBe(3);
    expect(quietOf(withSteps(runs(), seen(1, { by_ms: -2500, at_ms: START + 9000 }))).step_s).toBe(-2);
  });

  it("forward by more than was waited by the wall: nothing was, and never less than nothing", () => {
    expect(restOf(withSteps(runs(), seen(1, step(60, 29))), 30)).toBe(0);
  });

  it("back behind the start: not known, and nothing is written down", () => {
    expect(restOf(withSteps(runs(), seen(1, step(-60, -55))), -50)).toBeUndefined();
  });

  it("after it was stopped: what was waited until then stays", () => {
    const stopped = quietStopped(runs(), START + 3 * MINUTE_MS, seen(1));
    expect(withSteps(stopped, seen(1, step(60, 64)))).toBe(stopped);
    expect(restOf(stopped, 65)).toBe(3);
    expect(restOf(withSteps(quietGoesOn(stopped), seen(1, step(60, 64))), 65)).toBe(5);
  });

  it("before it was stopped, and seen only then: the stop knows of it", () => {
    expect(restOf(quietStopped(runs(), START + 65 * MINUTE_MS, seen(1, step(60, 63))), 70)).toBe(5);
  });

  it("seen by nobody but the reading itself", () => {
    expect(restPatches(runs(), START + 65 * MINUTE_MS, seen(1, step(60, 63)))).toEqual([{ at: ["measurement", "rest_s"], to: 300 }]);
  });

  it("by hours: the quiet time is still of this visit", () => {
    const now = withSteps(runs(), seen(1, step(24 * 60, 24 * 60 + 2)));
    expect(quietNow(now, START + (24 * 60 + 5) * MINUTE_MS)).toBeDefined();
    expect(restOf(now, 24 * 60 + 5)).toBe(5);
  });
});

/* Two windows of the app, each with a page of its own; minutes by the wall since the start, of 7 real ones. */
describe("a clock that two windows saw", () => {
  const step = (minutes: number, to_min: number) => ({ by_ms: minutes * MINUTE_MS, at_ms: T0 + 1000 + to_min * MINUTE_MS });
  /** The minutes the first reading writes down, the steps of page 1 and of page 2 being these. */
  const restOf = (one: ReturnType<typeof step>[], two: ReturnType<typeof step>[], wall_min: number): number => {
    const known = withSteps(withSteps(runs(), { page: 1, steps: one }), { page: 2, steps: two });
    return (withReading(known, "152", T0 + 1000 + wall_min * MINUTE_MS).measurement.rest_s ?? Number.NaN) / 60;
  };

  it("sees one step once, though each sees it at its own tick and measures it a little differently", () => {
    expect(restOf([step(60, 63)], [step(60.001, 63.015)], 67)).toBe(7);
    expect(restOf([step(60, 63), step(-60, 4)], [step(60, 63.015), step(-60, 6)], 7)).toBe(7); // the way back seen late: it was out of sight
  });

  it("knows of a step one of them alone had in sight, be they alike in size or not", () => {
    expect(restOf([step(50, 52)], [step(20, 74)], 77)).toBe(7);
    expect(restOf([step(30, 32)], [step(30, 64)], 67)).toBe(7);
    expect(restOf([], [step(20, 24)], 27)).toBe(7);
  });

  it("never has waited longer than it did where both stepped back once for one", () => {
    expect(restOf([step(60, 63), step(-20, 44)], [step(60, 63), step(-20, 45), step(30, 76)], 77)).toBe(7);
  });

  it("has nothing to tell from before the start, not even the older window", () => {
    expect(restOf([], [step(60, -30)], 7)).toBe(7);
    expect(restOf([], [step(90, -5), step(-60, -65), step(10, 13)], 17)).toBe(7);
  });

  it("knows by itself what it saw before, where the quiet time was begun on it", () => {
    const begun = quietStarted(open(), T0 + 1000, 600, { page: 1, steps: [] });
    const back = withSteps(begun, { page: 1, steps: [step(-65, -60), step(70, 12)] });
    expect(withReading(back, "152", T0 + 1000 + 12 * MINUTE_MS).measurement.rest_s).toBe(7 * 60);
  });
});
