/* The pulse by tapping along ten beats: from the times of the taps to a rate and its shortest and longest interval. Pure.
   Whether the pulse is even is the person's to say; nothing here judges it. */

/** Beats that are tapped; between them lie one interval fewer. */
export const BEATS = 10;
/** After a pause longer than this the count begins anew, in ms. */
export const PAUSE_MOST_MS = 3000;
/** The highest rate the record takes, a minute. */
const RATE_MOST_BPM = 999;
const MINUTE_MS = 60_000;

export interface Tapping {
  /** When each beat was tapped, in ms of any one clock. */
  at_ms: number[];
  /** Why the count began anew with the latest tap. */
  anew?: "pause" | "too_fast";
}

/** A finished count. */
export interface Pulse {
  /** Whole beats a minute, half up. */
  bpm: number;
  intervals: number;
  /** From the first beat to the last, in whole ms. */
  span_ms: number;
  shortest_ms: number;
  longest_ms: number;
}

export const NO_TAPS: Tapping = { at_ms: [] };

/** One more beat. After a pause, a clock that went back, or a count too fast to be one, it is the first of a new count. */
export function tapped({ at_ms }: Tapping, now_ms: number): Tapping {
  const last = at_ms[at_ms.length - 1];
  if (last !== undefined && (now_ms - last > PAUSE_MOST_MS || now_ms < last)) return { at_ms: [now_ms], anew: "pause" };
  const next = at_ms.length >= BEATS ? [now_ms] : [...at_ms, now_ms];
  return next.length === BEATS && !pulseOf(next) ? { at_ms: [now_ms], anew: "too_fast" } : { at_ms: next };
}

/** The rate of ten beats; undefined before the tenth, and for a rate no record could take. */
export function pulseOf(at_ms: readonly number[]): Pulse | undefined {
  if (at_ms.length !== BEATS) return undefined;
  const gaps = at_ms.slice(1).map((at, n) => Math.round(at - (at_ms[n] as number)));
  const span_ms = Math.round((at_ms[BEATS - 1] as number) - (at_ms[0] as number));
  if (span_ms <= 0) return undefined;
  const bpm = Math.floor((2 * MINUTE_MS * gaps.length + span_ms) / (2 * span_ms));
  if (bpm > RATE_MOST_BPM) return undefined;
  return { bpm, intervals: gaps.length, span_ms, shortest_ms: Math.min(...gaps), longest_ms: Math.max(...gaps) };
}
