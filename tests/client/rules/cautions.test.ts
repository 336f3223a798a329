/* Rule 8, worked by hand from shared_schemas/rules/README.md: each caution at its limit, order, direction, leaning. */
import { describe, expect, test } from "vitest";
import type { Measurement, MeasurementSet, Reading } from "../../../client/src/rules/measurement.ts";
import { assessed, keys } from "./make.ts";

type Values = (number | Partial<Reading>)[];
const five: Values = [150, 150, 150, 150, 150];
const cautions = (values: Values, ofSet: Partial<MeasurementSet> = {}, ofVisit: Partial<Measurement> = {}): string[] =>
  keys(assessed(values, ofSet, ofVisit));
const spaced = (seconds: number[], values: Values = five): Partial<MeasurementSet> => ({
  readings: values.map((value, index) => ({
    id: `t${index}`,
    systolic_mmhg: value as number,
    taken_s: seconds[index],
  })),
});

test("a calm, rested dog with a good cuff has none, and leans no way", () => {
  expect(assessed(five)).not.toHaveProperty("cautions");
  expect(assessed(five)).not.toHaveProperty("leaning");
});

describe("of the visit", () => {
  test.each([
    [{ rest_s: 299 }, ["rest_short"]],
    [{ rest_s: 300 }, []],
    [{ rest_s: undefined }, ["rest_short"]],
    [{ species: "cat", rest_s: 599 }, ["rest_short"]],
    [{ species: "cat", rest_s: 600 }, []],
    [{ demeanour: "tense" }, ["tense"]],
    [{ demeanour: "fighting" }, ["fighting"]],
    [{ demeanour: "sleepy" }, []],
    [{ state: "calmed" }, ["calmed"]],
    [{ state: "sedated" }, []],
    [{ rhythm: "irregular" }, ["irregular_rhythm"]],
  ] as [Partial<Measurement>, string[]][])("%j: %j", (visit, expected) => {
    expect(cautions(five, {}, visit)).toEqual(expected);
  });
});

describe("of the set", () => {
  test.each([
    [{ cuff_width_mm: 34 }, ["cuff_narrow"]],
    [{ cuff_width_mm: 35 }, []],
    [{ cuff_width_mm: 46 }, ["cuff_wide"]],
    [{ cuff_width_mm: undefined }, ["cuff_unknown"]],
    [{ limb_circumference_mm: undefined }, ["cuff_unknown"]],
    [{ cuff_above_heart_mm: 49 }, []],
    [{ cuff_above_heart_mm: 50 }, ["height_off"]],
    [{ cuff_above_heart_mm: -50 }, ["height_off"]],
    [{ posture: "sitting" }, ["sitting_up"]],
    [{ posture: "sternal" }, []],
    [{ method: "oscillometric", limb_circumference_mm: 70, cuff_width_mm: 28 }, ["oscillometric_high"]],
    [
      { method: "oscillometric", limb_circumference_mm: 69, cuff_width_mm: 28 },
      ["oscillometric_high", "oscillometric_small"],
    ],
  ] as [Partial<MeasurementSet>, string[]][])("%j: %j", (set, expected) => {
    expect(cautions(five, set)).toEqual(expected);
  });

  test("oscillometric from a mean of 150 on, without a window too", () => {
    const machine = { method: "oscillometric" } as const;
    expect(cautions([150, 150, 150, 150, 149], machine)).toEqual([]);
    expect(cautions([150], machine)).toEqual(["oscillometric_high"]);
    expect(cautions([], machine)).toEqual([]);
  });

  test("many set aside: more than a third of all readings", () => {
    const aside = { systolic_mmhg: 150, set_aside: "moved" };
    expect(cautions([150, 150, 150, aside, aside])).toEqual([]); // 2 of 6 with the first
    expect(cautions([150, 150, aside, aside])).toEqual(["many_set_aside"]); // 2 of 5
  });

  test("one sided: two or more, all above or all below the median of the eligible", () => {
    const aside = (systolic_mmhg: number) => ({ systolic_mmhg, set_aside: "moved" });
    const seven: Values = [140, 142, 144, 146, 148, 144, 144];
    expect(cautions([...seven, aside(145), aside(200)])).toEqual(["one_sided"]);
    expect(cautions([...seven, aside(143), aside(100)])).toEqual(["one_sided"]);
    expect(cautions([...seven, aside(144), aside(200)])).toEqual([]);
    expect(cautions([...seven, aside(143), aside(200)])).toEqual([]);
    expect(cautions([...seven, aside(200)])).toEqual([]);
    expect(cautions([...seven, aside(200), { beyond: "no_value", set_aside: "moved" }])).toEqual([]);
  });

  test("rising: last half above first by more than 50 permille: 100 100 102 105 105 is exactly 50", () => {
    expect(cautions([100, 100, 102, 105, 105])).toEqual([]);
    expect(cautions([100, 100, 102, 105, 106])).toEqual(["rising"]);
    expect(cautions([100, 106])).toEqual([]);
    const seven = [100, 100, 100, 102, 106, 106, 106];
    expect(cautions(seven, {}, { rhythm: "irregular" })).toEqual(["irregular_rhythm"]);
  });

  test("pulse differs by more than 10 and by more than a tenth of the palpated", () => {
    const pulse = (pulse_bpm: number, palpated_bpm: number): Values => [
      ...five.slice(1),
      { systolic_mmhg: 150, pulse_bpm, palpated_bpm },
    ];
    expect(cautions(pulse(90, 80))).toEqual([]);
    expect(cautions(pulse(91, 80))).toEqual(["pulse_differs"]);
    expect(cautions(pulse(69, 80))).toEqual(["pulse_differs"]);
    expect(cautions(pulse(220, 200))).toEqual([]);
    expect(cautions(pulse(221, 200))).toEqual(["pulse_differs"]);
  });
});

describe("minor", () => {
  test("a gap under 30 s; three within 20 s were typed in afterwards", () => {
    expect(cautions([], spaced([0, 30, 60, 90, 120]))).toEqual([]);
    expect(cautions([], spaced([0, 30, 60, 90, 119]))).toEqual(["gap_short"]);
    expect(cautions([], spaced([0, 10, 20, 90, 120]))).toEqual(["gap_unknown"]);
    expect(cautions([], spaced([0, 10, 21, 90, 120]))).toEqual(["gap_short"]);
    const untimed = [
      { id: "a", systolic_mmhg: 150, taken_s: 0 },
      { id: "b", systolic_mmhg: 150 },
      { id: "c", systolic_mmhg: 150, taken_s: 5 },
    ];
    expect(cautions([], { readings: untimed })).toEqual([]);
  });
  test("an odd value on an aneroid gauge, averaged", () => {
    expect(cautions([150, 150, 150, 150, 151], { gauge: "aneroid" })).toEqual(["odd_gauge_value"]);
    expect(cautions([151, 150, 150, 150, 150, 150, 150, 150], { gauge: "aneroid" })).toEqual([]);
    expect(cautions([150, 150, 150, 150, 151], { gauge: "digital" })).toEqual([]);
  });
  test("not comparable: both known and different, or the cuff share off by more than 50 permille", () => {
    const known = { site: "forearm", posture: "sternal", instrument: "one" };
    const previous = (more: object) =>
      ({ place: "clinic", previous: { method: "doppler", ...known, ...more } }) as Partial<Measurement>;
    const others = [{ method: "oscillometric" }, { site: "tail_base" }, { posture: "sitting" }, { instrument: "two" }];
    expect(cautions(five, known, previous({}))).toEqual([]);
    for (const more of others) {
      expect(cautions(five, known, previous(more))).toEqual(["not_comparable"]);
    }
    expect(cautions(five, known, previous({ place: "home" }))).toEqual(["not_comparable"]);
    expect(cautions(five, { site: undefined }, previous({ site: "tail_base" }))).toEqual([]);
    expect(cautions(five, {}, previous({ cuff_share_permille: 450 }))).toEqual([]);
    expect(cautions(five, {}, previous({ cuff_share_permille: 451 }))).toEqual(["not_comparable"]);
    expect(cautions(five, {}, previous({ cuff_share_permille: 349 }))).toEqual(["not_comparable"]);
  });
  test("unlikely but kept", () => {
    expect(cautions([240, 240, 240, 240, 240])).toEqual([]);
    expect(cautions([240, 240, 240, 240, 241])).toEqual(["unlikely_confirmed"]);
    expect(cautions([79])).toEqual(["unlikely_confirmed"]);
    expect(cautions([{ systolic_mmhg: 230, mean_mmhg: 181 }])).toEqual(["unlikely_confirmed"]);
    expect(cautions([{ systolic_mmhg: 230, diastolic_mmhg: 39 }])).toEqual(["unlikely_confirmed"]);
  });
});

test("direction by height, and leaning: shared by all headline cautions, else either", () => {
  const found = (ofSet: Partial<MeasurementSet>, ofVisit: Partial<Measurement> = {}) => assessed(five, ofSet, ofVisit);
  expect(found({ cuff_above_heart_mm: -60 }).cautions).toEqual([
    { key: "height_off", direction: "high", weight: "headline" },
  ]);
  expect(found({ cuff_above_heart_mm: 60 }).leaning).toBe("low");
  expect(found({ cuff_above_heart_mm: -60 }, { demeanour: "tense" }).leaning).toBe("high");
  expect(found({ cuff_above_heart_mm: 60 }, { demeanour: "tense" }).leaning).toBe("either");
  expect(assessed([150, 150, 150, 150, 151], { gauge: "aneroid" }).leaning).toBeUndefined();
});

test("they speak of the result set, headline before minor", () => {
  const found = assessed([150, 150, 150, 150, 151], { gauge: "aneroid", posture: "sitting" }, { rest_s: 0 });
  expect(keys(found)).toEqual(["rest_short", "sitting_up", "odd_gauge_value"]);
});
