/* The row of readings as shapes: each reading a mark at its pressure, in the order taken. Pure geometry in, geometry out;
   draws nothing, computes no rule, and must not know which screen asks. Time runs in one direction in every language. */

export interface Taken {
  id: string;
  systolic_mmhg?: number;
  beyond?: "above_gauge" | "no_sound" | "no_value";
  counts: boolean;
}

/** What may be drawn once *Finish* was pressed; all in mmHg. */
export interface Revealed {
  mean: number;
  half_width?: number;
  edges: number[];
}

export interface Mark {
  id: string;
  x: number;
  y: number;
  shape: "round" | "above" | "gap";
  counts: boolean;
  label: string;
  label_y: number;
}

export interface SeriesShape {
  width: number;
  height: number;
  left_out: number;
  marks: Mark[];
  mean?: number;
  interval?: { top: number; bottom: number };
  edges: { y: number; mmhg: number }[];
}

const SIZE = { height: 84, top: 26, bottom: 10, label_gap: 11, edge_label: 40 };
/** Least room for a number of three digits beside its neighbour. */
const STEP_LEAST = 28;
/** The least span shown, so that a steady series looks steady. */
const SPAN_LEAST_MMHG = 40;

function spanOf(values: number[]): { low: number; high: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const missing = Math.max(0, SPAN_LEAST_MMHG - (high - low));
  return { low: low - missing / 2, high: high + missing / 2 };
}

/**
 * Shapes of as many of the latest readings as have room in `width` px (`left_out` says how many came before);
 * edges only where they lie in the span shown.
 */
export function seriesShape(readings: Taken[], width: number, revealed?: Revealed): SeriesShape {
  const room = width - (revealed ? SIZE.edge_label : 0);
  const shown = readings.slice(-Math.floor(room / STEP_LEAST));
  const values = shown.flatMap(({ systolic_mmhg }) => (systolic_mmhg === undefined ? [] : [systolic_mmhg]));
  if (revealed) values.push(revealed.mean);
  const span = spanOf(values.length > 0 ? values : [0]);
  const floor = SIZE.height - SIZE.bottom;
  const yOf = (mmhg: number): number => floor - ((mmhg - span.low) / (span.high - span.low)) * (floor - SIZE.top);
  const step = room / Math.max(shown.length, 5);
  const marks = shown.map((reading, at): Mark => markOf(reading, step * (at + 0.5), yOf, floor));
  const shape: SeriesShape = { width, height: SIZE.height, left_out: readings.length - shown.length, marks, edges: [] };
  if (!revealed) return shape;
  shape.mean = yOf(revealed.mean);
  if (revealed.half_width !== undefined) {
    shape.interval = { top: yOf(revealed.mean + revealed.half_width), bottom: yOf(revealed.mean - revealed.half_width) };
  }
  const inSpan = revealed.edges.filter((mmhg) => mmhg >= span.low && mmhg <= span.high);
  shape.edges = inSpan.map((mmhg) => ({ mmhg, y: yOf(mmhg) }));
  return shape;
}

function markOf(reading: Taken, x: number, yOf: (mmhg: number) => number, floor: number): Mark {
  const { id, counts, systolic_mmhg, beyond } = reading;
  if (systolic_mmhg !== undefined) {
    const y = yOf(systolic_mmhg);
    return { id, x, y, shape: "round", counts, label: String(systolic_mmhg), label_y: y - SIZE.label_gap };
  }
  const above = beyond === "above_gauge";
  const y = above ? SIZE.top - 12 : floor;
  return { id, x, y, shape: above ? "above" : "gap", counts, label: "", label_y: y };
}
