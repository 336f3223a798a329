/* By how much the clock was set while a quiet time ran, out of what several pages of the app saw of it: one step seen from two windows
   is one step. Pure. Must not count less forward than there was: the quiet time may come out shorter than it was, never longer. */
import type { ClockSeen } from "../../parts/now";

/** A step of the clock, what it said right after, and the page that saw it; as it is kept in the draft. */
export type StepSeen = { page: number; at_ms: number; by_ms: number };

/** Two windows see the same step at their next tick, each by its own; ms. */
const SAME_STEP_MS = 3000;

/**
 * What a page saw since the quiet time began. The page it was begun on knows how many steps it had seen by then; of any other, all
 * up to the last one that led to before the start are left out.
 */
export function stepsSince(from_ms: number, begun: { page?: number; page_steps?: number }, { page, steps }: ClockSeen): StepSeen[] {
  const before = steps.reduce((first, { at_ms }, n) => (at_ms < from_ms ? n + 1 : first), 0);
  return steps.slice(begun.page === page ? (begun.page_steps ?? 0) : before).map((step) => ({ ...step, page }));
}

function isSameStep(one: StepSeen, other: StepSeen): boolean {
  return one.page !== other.page && [one.at_ms - other.at_ms, one.by_ms - other.by_ms].every((apart_ms) => Math.abs(apart_ms) <= SAME_STEP_MS);
}

/**
 * The whole of it, s, rounded up. Every step forward counts once: a page out of sight may have missed it. Steps back are seen from
 * every page sooner or later, so that the page that saw most of them is believed.
 */
export function aheadBy_s(seen: readonly StepSeen[]): number {
  const forward = seen.filter((one, n) => one.by_ms > 0 && !seen.slice(0, n).some((earlier) => isSameStep(one, earlier)));
  const forward_ms = forward.reduce((sum, { by_ms }) => sum + by_ms, 0);
  const back = [...new Set(seen.map(({ page }) => page))].map((page) =>
    seen.reduce((sum, step) => sum + (step.page === page ? Math.max(0, -step.by_ms) : 0), 0));
  return Math.ceil((forward_ms - Math.max(0, ...back)) / 1000);
}
