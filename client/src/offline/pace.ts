/**
 * How fast to try: waiting times, size of a batch, and which entries have to rest.
 * Pure arithmetic on one small record that lives as long as the window. It decides when, never whether: no entry
 * is given up here.
 */

/** The state of trying. Kept in memory only: a fresh start may try everything once at once. */
export interface Pace {
  /** Runs that ended in trouble, one after another. */
  failures: number;
  /** Entries in the next batch. */
  limit: number;
  /** Our own back-off ends then, ms. */
  ownWaitUntilMs: number;
  /** The server asked us to wait until then, ms; only a person's press overrides it. */
  serverWaitUntilMs: number;
  /** Entries that failed by their own fault, and when each may be tried again, ms. */
  readonly resting: Map<number, number>;
  /** Entries whose last try alone failed: others go first. */
  readonly goLast: Set<number>;
}

export const MOST_ENTRIES = 100;
export const MOST_BYTES = 512 * 1024;
/** Failures of its own after which an entry is set aside: told to the person and tried hourly. */
export const TRIES_UNTIL_ASIDE = 5;
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 5 * 60 * 1000;
/** A longer word is not believed: it may come from something before the server, and nobody might press for days. */
const LONGEST_SERVER_WAIT_MS = 60 * 60 * 1000;
const REST_MS = 30 * 1000;
const ASIDE_MS = 60 * 60 * 1000;

export function freshPace(): Pace {
  return {
    failures: 0,
    limit: MOST_ENTRIES,
    ownWaitUntilMs: 0,
    serverWaitUntilMs: 0,
    resting: new Map(),
    goLast: new Set(),
  };
}

/** After a batch got through: twice as many next time. */
export function larger(pace: Pace): void {
  pace.limit = Math.min(MOST_ENTRIES, pace.limit * 2);
}

/** After a batch of `size` did not: half as many, one at least. */
export function smaller(pace: Pace, size: number): void {
  pace.limit = Math.max(1, Math.floor(size / 2));
}

/** 1 s × 2^n, at most 5 min, with full jitter: phones that lost the same server do not come back together. */
export function waitAfterFailure(pace: Pace, nowMs: number, random: () => number, serverWaitMs = 0): void {
  const ceiling = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(pace.failures, 20));
  pace.failures += 1;
  pace.ownWaitUntilMs = nowMs + Math.ceil(random() * ceiling);
  pace.serverWaitUntilMs = nowMs + Math.min(LONGEST_SERVER_WAIT_MS, serverWaitMs);
}

export function allWell(pace: Pace): void {
  pace.failures = 0;
  pace.ownWaitUntilMs = 0;
  pace.serverWaitUntilMs = 0;
}

/** A person pressed the button: everything may be tried, whatever was asked of us before. */
export function pressed(pace: Pace): void {
  allWell(pace);
  pace.resting.clear();
}

/** When the next run may begin by itself, ms; in the past = at once. */
export function nextTryMs(pace: Pace): number {
  return Math.max(pace.ownWaitUntilMs, pace.serverWaitUntilMs);
}

/** Is it too early for a run? */
export function mustWait(pace: Pace, nowMs: number): boolean {
  const isOwnWait = isAhead(pace.ownWaitUntilMs, nowMs, LONGEST_WAIT_MS);
  return isOwnWait || isAhead(pace.serverWaitUntilMs, nowMs, LONGEST_SERVER_WAIT_MS);
}

/** No wait is longer than `longestMs`: one that seems so began before the phone's clock was set back, and is over. */
function isAhead(untilMs: number, nowMs: number, longestMs: number): boolean {
  return nowMs < untilMs && untilMs - nowMs <= longestMs;
}

/** Something changed for the better (network back, screen looked at): our own waiting is over, the server's is not. */
export function hope(pace: Pace): void {
  pace.ownWaitUntilMs = 0;
}

/** An entry failed by its own fault, for the `tries`-th time: it rests 30 s, and an hour from the fifth time on. */
export function rest(pace: Pace, number: number, nowMs: number, tries: number): void {
  pace.resting.set(number, nowMs + (tries >= TRIES_UNTIL_ASIDE ? ASIDE_MS : REST_MS));
}

/** The entries that have to rest at this moment. */
export function restingAt(pace: Pace, nowMs: number): Set<number> {
  for (const [number, until] of pace.resting) {
    if (!isAhead(until, nowMs, ASIDE_MS)) pace.resting.delete(number);
  }
  return new Set(pace.resting.keys());
}
