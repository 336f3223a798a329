/* The row of readings as shapes: each reading a mark at its pressure, in the order taken, and its number in one line below the
   ground line, where neither a mark nor the mean can cross it. Pure geometry in, geometry out; draws nothing, computes no rule, and must not know which screen asks. Time runs in one direction in every language. */

export interface Taken {
  id: string;
  systolic_mmhg?: number;
  beyond?: "above_gauge" | "no_sound" | "no_value";
  counts: boolean;
}

/** What may be drawn once *Finish* was pressed; all in mmHg. */
export interface Revealed {
  /** Absent where the readings are too scattered for one: a thick line would say that it stands for them. */
  mean?: number;
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
  /** Where the ground line lies; numbers stand below it. */
  base: number;
  /** `label_y` is absent where the number would lie on another one: the line is drawn all the same. */
  edges: { y: number; mmhg: number; label_y?: number }[];
}

const SIZE = { hidden: 76, revealed: 148, top: 12, mark: 9, label: 18, edge_label: 40 };
/** Least distance of two numbers above each other. */
const LABEL_LEAST = 14;
/** Least room for a number of three digits beside its neighbour. */
const STEP_LEAST = 27;
/** The least span shown, so that a steady series looks steady. */
const SPAN_LEAST_MMHG = 40;

function spanOf(values: number[]): { low: number; high: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const missing = Math.max(0, SPAN_LEAST_MMHG - (high - low));
  return { low: low - missing / 2, high: high + missing / 2 };
}

/** How one row is to be drawn, where it is not drawn by itself. */
interface Frame {
  revealed?: Revealed;
  /** The span of several rows that belong together. */
  span?: { low: number; high: number };
  height?: number;
}

function roomFor(width: number, revealed: Revealed | undefined): number {
  return width - (revealed ? SIZE.edge_label : 0);
}

function spanWith(readings: Taken[], revealed: Revealed | undefined): { low: number; high: number } {
  const values = readings.flatMap(({ systolic_mmhg }) => (systolic_mmhg === undefined ? [] : [systolic_mmhg]));
  if (revealed?.mean !== undefined) values.push(revealed.mean);
  return spanOf(values.length > 0 ? values : [0]);
}

/**
 * Shapes of as many of the latest readings as have room in `width` px (`left_out` says how many came before);
 * edges only where they lie in the span shown.
 */
export function seriesShape(readings: Taken[], width: number, frame: Frame = {}): SeriesShape {
  const { revealed } = frame;
  const room = roomFor(width, revealed);
  const shown = readings.slice(-Math.floor(room / STEP_LEAST));
  const span = frame.span ?? spanWith(shown, revealed);
  const height = frame.height ?? (revealed ? SIZE.revealed : SIZE.hidden);
  const base = height - SIZE.label;
  const floor = base - SIZE.mark;
  const ceiling = SIZE.top + (shown.some(({ beyond }) => beyond === "above_gauge") ? 2 * SIZE.mark : 0);
  const yOf = (mmhg: number): number => floor - ((mmhg - span.low) / (span.high - span.low)) * (floor - ceiling);
  const step = room / Math.max(shown.length, 5);
  const marks = shown.map((reading, at): Mark => markOf(reading, step * (at + 0.5), yOf, { floor, label_y: height - 3 }));
  const shape: SeriesShape = { width, height, base, left_out: readings.length - shown.length, marks, edges: [] };
  return revealed ? withRevealed(shape, revealed, span, yOf) : shape;
}

function withRevealed(shape: SeriesShape, revealed: Revealed, span: { low: number; high: number }, yOf: (mmhg: number) => number): SeriesShape {
  const { mean, half_width } = revealed;
  const inSpan = revealed.edges.filter((mmhg) => mmhg >= span.low && mmhg <= span.high);
  return {
    ...shape,
    ...(mean === undefined ? {} : { mean: yOf(mean) }),
    ...(mean === undefined || half_width === undefined ? {} : { interval: { top: yOf(mean + half_width), bottom: yOf(mean - half_width) } }),
    edges: labelled(inSpan.map((mmhg) => ({ mmhg, y: yOf(mmhg) }))),
  };
}

/** All readings, in as many rows of one scale as it takes, about equally long; each with the readings that stand in it. */
export function seriesRows<T extends Taken>(readings: T[], width: number, revealed?: Revealed): { shape: SeriesShape; readings: T[] }[] {
  const rows = Math.ceil(readings.length / Math.floor(roomFor(width, revealed) / STEP_LEAST));
  const most = Math.ceil(readings.length / Math.max(rows, 1));
  const frame = { span: spanWith(readings, revealed), ...(revealed ? { revealed } : {}) };
  return Array.from({ length: rows }, (_, row) => {
    const part = readings.slice(row * most, (row + 1) * most);
    return { shape: seriesShape(part, width, frame), readings: part };
  });
}

/** From the highest edge down, a number only where the one above leaves it room. */
function labelled(edges: { mmhg: number; y: number }[]): SeriesShape["edges"] {
  let above = -LABEL_LEAST;
  return [...edges].sort((one, other) => one.y - other.y).map((edge) => {
    if (edge.y - above < LABEL_LEAST) return edge;
    above = edge.y;
    return { ...edge, label_y: edge.y + 4 };
  });
}

function markOf(reading: Taken, x: number, yOf: (mmhg: number) => number, { floor, label_y }: { floor: number; label_y: number }): Mark {
  const { id, counts, systolic_mmhg, beyond } = reading;
  if (systolic_mmhg !== undefined) {
    return { id, x, y: yOf(systolic_mmhg), shape: "round", counts, label: String(systolic_mmhg), label_y };
  }
  const above = beyond === "above_gauge";
  return { id, x, y: above ? SIZE.top : floor, shape: above ? "above" : "gap", counts, label: "", label_y };
}
