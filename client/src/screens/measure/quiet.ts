/* The quiet time of one measurement: what is left, when it is ready, and what was really waited. A start, a need and the time now go
   in, so it is exact after the page was hidden or killed. Pure; its need comes from whoever starts it. Must not hold a figure of a rule. */
import type { ClockStep } from "../../parts/now";
import { without, type Open } from "./open";
import { done, type Patch } from "./undo";

export type Quiet = NonNullable<Open["quiet"]>;

/** Over for longer than this it is no quiet time of this visit any more, ms. */
const SAME_VISIT_MS = 4 * 3_600_000;

/** Seconds since its start, whole, up to its end where it has one; undefined while the clock stands before the start. */
export function waited_s({ from_ms, to_ms }: Quiet, now_ms: number): number | undefined {
  const ms = (to_ms ?? now_ms) - from_ms;
  return ms < 0 ? undefined : Math.floor(ms / 1000);
}

/** The instant at which the need is met, ms UTC. */
export function readyAt_ms({ from_ms, need_s }: Quiet): number {
  return from_ms + need_s * 1000;
}

/** Seconds still to wait, rounded up, 0 when it is over. */
export function left_s(quiet: Quiet, now_ms: number): number {
  return Math.max(0, Math.ceil((readyAt_ms(quiet) - now_ms) / 1000));
}

/** Per mille of the need that is over, 0 to 1000. */
export function done_permille(quiet: Quiet, now_ms: number): number {
  const waited_ms = Math.max(0, now_ms - quiet.from_ms);
  return quiet.need_s === 0 ? 1000 : Math.min(1000, Math.floor(waited_ms / quiet.need_s));
}

/** 462 s as 7:42, an hour and more as 1:02:05. */
export function clockOf(seconds: number): string {
  const two = (n: number): string => String(n).padStart(2, "0");
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

function takenAfter({ measurement }: Open, from_ms: number): boolean {
  const begun_ms = measurement.started_at_ms ?? from_ms;
  return measurement.sets.some(({ readings }) => readings.some(({ taken_s }) => taken_s !== undefined && begun_ms + taken_s * 1000 > from_ms));
}

/**
 * The quiet time that runs or ran in this visit; undefined for one left over from another day: a draft that lies overnight
 * must not say that the animal was left in peace since yesterday.
 */
export function quietOfVisit({ quiet }: Pick<Open, "quiet">, now_ms: number): Quiet | undefined {
  return quiet && now_ms - (quiet.to_ms ?? readyAt_ms(quiet)) <= SAME_VISIT_MS ? quiet : undefined;
}

/** The quiet time that still matters at this moment: not stopped, no reading since its start, and not left over from another day. */
export function quietNow(open: Open, now_ms: number): Quiet | undefined {
  const quiet = quietOfVisit(open, now_ms);
  return !quiet || quiet.to_ms !== undefined || open.measurement.outcome || takenAfter(open, quiet.from_ms) ? undefined : quiet;
}

/** The open measurement with its quiet time running from now; the one before is forgotten, one *Undo* brings it back. */
export function quietStarted(open: Open, now_ms: number, need_s: number): Open {
  return done(without(open), "act-quiet-start", {}, [{ at: ["quiet"], to: { from_ms: now_ms, need_s } }]);
}

/** The same measurement with its quiet time from now on; one that has its quiet time stays as it is, and one of another day gives way. */
export function withQuiet(open: Open, now_ms: number, need_s: number): Open {
  return quietOfVisit(open, now_ms) ? open : { ...open, quiet: { from_ms: now_ms, need_s } };
}

/** The quiet time ended now: what was waited until here is what counts. */
export function quietStopped(open: Open, now_ms: number): Open {
  if (!open.quiet) return open;
  return done(without(open), "act-quiet-stop", {}, [{ at: ["quiet", "to_ms"], to: now_ms }]);
}

/** A stopped quiet time goes on as if it had not been stopped. */
export function quietGoesOn(open: Open): Open {
  return open.quiet ? done(without(open), "act-quiet-go-on", {}, [{ at: ["quiet", "to_ms"] }]) : open;
}

/** By how many seconds the clock was set while it ran: what the draft knows of earlier pages, and what this page saw. */
export function stepOf_s({ from_ms, step_s = 0 }: Quiet, steps: readonly ClockStep[]): number {
  const since = steps.filter(({ found_ms, by_ms }) => from_ms < Math.max(found_ms, found_ms - by_ms));
  return since.length === 0 ? step_s : Math.round(since.reduce((sum, { by_ms }) => sum + by_ms, 0) / 1000);
}

/** The draft knows from now on by how much the clock was set while it ran; nothing is corrected by it. */
export function withSteps(open: Open, steps: readonly ClockStep[]): Open {
  const step_s = open.quiet && stepOf_s(open.quiet, steps);
  if (!open.quiet || !step_s || step_s === open.quiet.step_s) return open;
  return { ...open, quiet: { ...open.quiet, step_s } };
}

function hasReading({ measurement }: Open): boolean {
  return measurement.sets.some(({ readings }) => readings.length > 0);
}

/**
 * What the first reading writes down beside itself: the quiet time that was really waited, s. Nothing where minutes were typed
 * (they stand), where none ran in this visit, where it is not the first reading, or where the clock stands before the start.
 */
export function restPatches(open: Open, at_ms: number): Patch[] {
  const quiet = quietOfVisit(open, at_ms);
  if (!quiet || open.measurement.rest_s !== undefined || hasReading(open)) return [];
  const rest_s = waited_s(quiet, at_ms);
  return rest_s === undefined ? [] : [{ at: ["measurement", "rest_s"], to: rest_s }];
}
