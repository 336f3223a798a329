/*
 * Geometry of the row of readings: higher pressure stands higher, time runs on, nothing lies outside, the hidden stays hidden.
 */
import { describe, expect, it } from "vitest";
import { seriesRows, seriesShape, type Taken } from "../../../client/src/parts/series_shape.ts";

const taken = (...values: number[]): Taken[] => values.map((systolic_mmhg, n) => ({ id: String(n), systolic_mmhg, counts: n > 0 }));

describe("the row of readings", () => {
  it("puts each reading after the one before, higher where the pressure is higher", () => {
    const { marks } = seriesShape(taken(168, 142, 138, 190), 232);
    expect(marks.map(({ label }) => label)).toEqual(["168", "142", "138", "190"]);
    for (let n = 1; n < marks.length; n += 1) expect(marks[n]!.x).toBeGreaterThan(marks[n - 1]!.x);
    const highestFirst = [...marks].sort((one, other) => one.y - other.y).map(({ label }) => label);
    expect(highestFirst).toEqual(["190", "168", "142", "138"]);
  });

  it("keeps marks and numbers inside, whatever the spread", () => {
    for (const values of [[140], [140, 140, 140], [20, 300], [0, 999], Array.from({ length: 40 }, (_, n) => 100 + n)]) {
      const { marks, width, height, base } = seriesShape(taken(...values), 232);
      for (const { x, y, label_y } of marks) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(width);
        expect(y - 8).toBeGreaterThanOrEqual(0);
        expect(y + 8).toBeLessThanOrEqual(base);
        expect(label_y - 10).toBeGreaterThan(base);
        expect(label_y).toBeLessThan(height);
      }
    }
  });

  it("shows the latest where not all have room, and says how many came before", () => {
    const { marks, left_out } = seriesShape(taken(...Array.from({ length: 12 }, (_, n) => 120 + n)), 232);
    expect(marks.length + left_out).toBe(12);
    expect(marks.at(-1)?.label).toBe("131");
    // a number of three digits takes 24 px at 13 px of type: none lies on its neighbour, nor outside
    expect(marks[0]!.x - 12).toBeGreaterThanOrEqual(0);
    expect((marks[1]!.x - marks[0]!.x)).toBeGreaterThanOrEqual(26);
  });

  it("shows all of them in rows of one scale after Finish, each once and in the order taken", () => {
    for (const count of [1, 8, 9, 12, 13, 40]) {
      const rows = seriesRows(taken(...Array.from({ length: count }, (_, n) => 120 + n)), 336, { mean: 130, edges: [140] });
      expect(rows.flatMap(({ shape }) => shape.marks.map(({ label }) => Number(label)))).toEqual(Array.from({ length: count }, (_, n) => 120 + n));
      expect(rows.map(({ shape }) => shape.left_out)).toEqual(rows.map(() => 0));
      expect(new Set(rows.map(({ shape }) => shape.mean)).size).toBe(1);
    }
  });

  it("draws attempts without a number apart: above the gauge at the top, the others at the foot", () => {
    const { marks, height } = seriesShape([...taken(140), { id: "a", beyond: "above_gauge", counts: false }, { id: "b", beyond: "no_sound", counts: false }], 232);
    expect(marks.map(({ shape }) => shape)).toEqual(["round", "above", "gap"]);
    expect(marks[1]!.y).toBeLessThan(marks[0]!.y);
    const high = seriesShape([...taken(190, 250), { id: "a", beyond: "above_gauge", counts: false }], 232).marks;
    expect(high[1]!.y - high[2]!.y).toBeGreaterThan(14);
    expect(marks[2]!.y).toBeGreaterThan(height / 2);
  });

  it("hides mean, interval and edges until they are revealed, and draws only edges within the span", () => {
    const hidden = seriesShape(taken(140, 150), 336);
    expect([hidden.mean, hidden.interval, hidden.edges]).toEqual([undefined, undefined, []]);
    const shown = seriesShape(taken(140, 150), 336, { revealed: { mean: 150, half_width: 4, edges: [140, 160, 180] } });
    expect(shown.edges.map(({ mmhg }) => mmhg).sort()).toEqual([140, 160]);
    expect(shown.interval!.top).toBeLessThan(shown.mean!);
    expect(shown.interval!.bottom).toBeGreaterThan(shown.mean!);
  });

  it("lets neither mean, interval nor edge run through a number, whatever the spread", () => {
    for (const values of [[168, 142, 138, 140, 136, 144], [150, 131, 172, 128, 190, 140, 165], [99, 95, 96, 94, 95, 95], [30, 290, 100]]) {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const { marks, edges, interval, mean: at, base } = seriesShape(taken(...values), 336, { revealed: { mean, half_width: 4, edges: [140, 160, 180] } });
      const top = Math.min(...marks.map(({ label_y }) => label_y - 10));
      for (const y of [at!, interval!.bottom, base, ...edges.map((edge) => edge.y)]) expect(y).toBeLessThan(top);
      const numbers = edges.flatMap(({ label_y }) => (label_y === undefined ? [] : [label_y]));
      for (let n = 1; n < numbers.length; n += 1) expect(numbers[n]! - numbers[n - 1]!).toBeGreaterThanOrEqual(14);
    }
  });
});
