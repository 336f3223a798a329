/* The quiet time of one measurement: what is left, when it is ready, and what was really waited. A start, a need and the time now go
   in, so it is exact after the page was hidden or killed. A clock set forward meanwhile is no quiet time: it is taken off, and said.
   Pure; its need comes from whoever starts it. Must not hold a figure of a rule, nor ever say more than was waited. */
import { clockSeen, type ClockSeen } from "../../parts/now";
import { aheadBy_s, stepsSince } from "./clock_steps";
import { SAME_VISIT_MS, without, type Open } from "./open";
import { done, type Patch } from "./undo";

export type Quiet = NonNullable<Open["quiet"]>;

/** By how many seconds the wall is ahead of what was waited: of a clock set back nothing is made up. */
function ahead_s({ step_s = 0 }: Quiet): number {
  return Math.max(0, step_s);
}

function waited_ms(quiet: Quiet, now_ms: number): number {
  return Math.max(0, (quiet.to_ms ?? now_ms) - quiet.from_ms - ahead_s(quiet) * 1000);
}

/** Seconds since its start, whole, up to its end where it has one; undefined while the clock stands before the start. */
export function waited_s(quiet: Quiet, now_ms: number): number | undefined {
  return (quiet.to_ms ?? now_ms) < quiet.from_ms ? undefined : Math.floor(waited_ms(quiet, now_ms) / 1000);
}

/** The instant at which the need is met by the clock as it goes now, ms UTC. */
export function readyAt_ms(quiet: Quiet): number {
  return quiet.from_ms + (quiet.need_s + ahead_s(quiet)) * 1000;
}

/** Seconds still to wait, rounded up, 0 when it is over. */
export function left_s(quiet: Quiet, now_ms: number): number {
  return Math.max(0, Math.ceil((readyAt_ms(quiet) - now_ms) / 1000));
}

/** Per mille of the need that is over, 0 to 1000. */
export function done_permille(quiet: Quiet, now_ms: number): number {
  const { to_ms: _to, ...runs } = quiet;
  return quiet.need_s === 0 ? 1000 : Math.min(1000, Math.floor(waited_ms(runs, now_ms) / quiet.need_s));
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

/** One that begins now. What the clock did before is none of its business: it begins behind the steps this page saw. */
export function quietFrom(now_ms: number, need_s: number, { page, steps }: ClockSeen): Quiet {
  return { from_ms: now_ms, need_s, page, page_steps: steps.length };
}

/** The open measurement with its quiet time running from now; the one before is forgotten, one *Undo* brings it back. */
export function quietStarted(open: Open, now_ms: number, need_s: number, seen: ClockSeen = clockSeen()): Open {
  return done(without(open), "act-quiet-start", {}, [{ at: ["quiet"], to: { ...quietFrom(now_ms, need_s, seen) } }]);
}

/** The same measurement with its quiet time from now on; one that has its quiet time stays as it is, and one of another day gives way. */
export function withQuiet(open: Open, now_ms: number, need_s: number, seen: ClockSeen = clockSeen()): Open {
  return quietOfVisit(open, now_ms) ? open : { ...open, quiet: quietFrom(now_ms, need_s, seen) };
}

/** The quiet time ended now: what was waited until here is what counts, and what the clock does from here on does not. */
export function quietStopped(open: Open, now_ms: number, seen: ClockSeen = clockSeen()): Open {
  if (!open.quiet) return open;
  return done(without(withSteps(open, seen)), "act-quiet-stop", {}, [{ at: ["quiet", "to_ms"], to: now_ms }]);
}

/** A stopped quiet time goes on as if it had not been stopped. */
export function quietGoesOn(open: Open): Open {
  return open.quiet ? done(without(open), "act-quiet-go-on", {}, [{ at: ["quiet", "to_ms"] }]) : open;
}

/**
 * A quiet time that knows by how much the clock was set while it ran: what the draft knows of other pages, and what this page saw.
 * Part of a second counts as time that was not waited. One that was stopped stays as it is.
 */
export function withSeen(quiet: Quiet, now: ClockSeen): Quiet {
  const mine = stepsSince(quiet.from_ms, quiet, now);
  const known = quiet.seen ?? [];
  const before = known.filter(({ page }) => page === now.page);
  const isKnown = mine.length === before.length && mine.every(({ at_ms, by_ms }, n) => before[n]?.at_ms === at_ms && before[n]?.by_ms === by_ms);
  if (quiet.to_ms !== undefined || isKnown) return quiet;
  const seen = [...known.filter(({ page }) => page !== now.page), ...mine];
  return { ...quiet, step_s: aheadBy_s(seen), seen };
}

/** The same, of the open measurement: from now on its draft knows. */
export function withSteps(open: Open, seen: ClockSeen): Open {
  const quiet = open.quiet && withSeen(open.quiet, seen);
  return !quiet || quiet === open.quiet ? open : { ...open, quiet };
}

function hasReading({ measurement }: Open): boolean {
  return measurement.sets.some(({ readings }) => readings.length > 0);
}

/**
 * What the first reading writes down beside itself: the quiet time that was really waited, s. Nothing where minutes were typed
 * (they stand), where none ran in this visit, where it is not the first reading, or where the clock stands before the start.
 */
export function restPatches(open: Open, at_ms: number, seen: ClockSeen = clockSeen()): Patch[] {
  const quiet = quietOfVisit(withSteps(open, seen), at_ms);
  if (!quiet || open.measurement.rest_s !== undefined || hasReading(open)) return [];
  const rest_s = waited_s(quiet, at_ms);
  return rest_s === undefined ? [] : [{ at: ["measurement", "rest_s"], to: rest_s }];
}
