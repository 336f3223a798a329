/*
 * The pulse by tapping: ten beats are nine intervals; rates worked by hand from the times of the taps.
 */
import { describe, expect, it } from "vitest";
import { BEATS, NO_TAPS, PAUSE_MOST_MS, pulseOf, tapped, type Tapping } from "../../../../client/src/screens/measure/pulse_tap.ts";

const all = (...at_ms: number[]): Tapping => at_ms.reduce(tapped, NO_TAPS);
const every = (ms: number, count = BEATS): number[] => Array.from({ length: count }, (_, n) => 1000 + n * ms);

describe("ten beats", () => {
  it.each([
    // nine intervals of 400 ms are 3.6 s: 9 × 60 / 3.6 = 150
    [every(400), { bpm: 150, intervals: 9, span_ms: 3600, shortest_ms: 400, longest_ms: 400 }],
    // 300 600 300 600 300 600 300 600 300: 3.9 s, 540 / 3.9 = 138.46
    [[0, 300, 900, 1200, 1800, 2100, 2700, 3000, 3600, 3900], { bpm: 138, intervals: 9, span_ms: 3900, shortest_ms: 300, longest_ms: 600 }],
    // eight of 500 and one of 800: 4.8 s, 540 / 4.8 = 112.5, half up
    [[0, 500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4800], { bpm: 113, intervals: 9, span_ms: 4800, shortest_ms: 500, longest_ms: 800 }],
  ])("give %o", (taps, pulse) => {
    expect(pulseOf(all(...taps).at_ms)).toEqual(pulse);
  });

  it("are needed: nine give nothing", () => {
    expect(pulseOf(all(...every(400, 9)).at_ms)).toBeUndefined();
  });

  it("begin anew with the eleventh", () => {
    expect(all(...every(400, 11)).at_ms).toHaveLength(1);
  });
});

describe("a pause", () => {
  it("of exactly three seconds still counts, a longer one begins anew and says so", () => {
    expect(all(0, PAUSE_MOST_MS)).toEqual({ at_ms: [0, 3000] });
    expect(all(0, 500, 3501)).toEqual({ at_ms: [3501], anew: "pause" });
    // said until the next tap
    expect(all(0, 3001, 3400)).toEqual({ at_ms: [3001, 3400] });
  });

  it("is not made of a clock that went back", () => {
    expect(all(5000, 4000)).toEqual({ at_ms: [4000], anew: "pause" });
  });
});

it("no record takes a rate above 999 a minute: such a count begins anew", () => {
  // nine intervals of 60 ms are 0.54 s: 1000 a minute; of 61 ms: 983.6
  expect(all(...every(60)).anew).toBe("too_fast");
  expect(pulseOf(all(...every(61)).at_ms)?.bpm).toBe(984);
});
