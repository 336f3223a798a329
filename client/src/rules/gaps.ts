/*
 * The times between successive readings of a set, for the two cautions about gaps.
 * Only readings that follow each other directly are compared: one without a time between them hides the gap.
 */
import type { Reading } from "./measurement.ts";

/** Every run of `count` successive readings whose times are all known, as those times in seconds. */
function timesOfRuns(readings: readonly Reading[], count: number): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (let end = count; end <= readings.length; end += 1) {
    const times = readings.slice(end - count, end).map((reading) => reading.taken_s);
    if (times.every((time) => time !== undefined)) runs.push(times as number[]);
  }
  return runs;
}

/** Are two successive readings less than `seconds` apart? */
export function hasShortGap(readings: readonly Reading[], seconds: number): boolean {
  return timesOfRuns(readings, 2).some(([before, after]) => Math.abs(after - before) < seconds);
}

/** Do `count` successive readings lie within `seconds`, the limit included? */
export function hasCloseTimes(readings: readonly Reading[], count: number, seconds: number): boolean {
  return timesOfRuns(readings, count).some((times) => Math.max(...times) - Math.min(...times) <= seconds);
}
