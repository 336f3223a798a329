/* The time now for whatever counts down: one timer for the whole page, once a second while it is visible, and at once when the page
   comes back. It also watches the clock itself: a step of it is said, never corrected in silence. Must not keep a time of its own. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

const TICK_MS = 1000;
/** From here on the clock was set, and no tick was late. */
const STEP_MS = 2000;

/** The wall clock and the browser's own steady one, read together; ms. */
export interface Clocks {
  wall_ms: number;
  steady_ms: number;
}

/** The clock was set by this much (forward > 0), ms; `at_ms` is what it said right after, ms UTC. */
export interface ClockStep {
  by_ms: number;
  at_ms: number;
}

/** What one page saw of the clock: every step since it began; `page` tells it from the pages before and after it. */
export interface ClockSeen {
  page: number;
  steps: readonly ClockStep[];
}

/**
 * How far the wall clock was set between two looks, ms; 0 for none. A phone asleep may stop the steady clock, so that after a time
 * out of sight (`wasHidden`) only a step back is certain.
 */
export function stepBetween(before: Clocks, after: Clocks, wasHidden: boolean): number {
  const by_ms = after.wall_ms - before.wall_ms - (after.steady_ms - before.steady_ms);
  const isStep = wasHidden ? by_ms < -STEP_MS : Math.abs(by_ms) > STEP_MS;
  return isStep ? Math.round(by_ms) : 0;
}

/** The wall clock as it was read last, ms UTC. */
export const now = signal(Date.now());
/** Every step of the clock this page saw. */
const clockSteps = signal<readonly ClockStep[]>([]);

const BACK = ["pageshow", "focus"] as const;
const read = (): Clocks => ({ wall_ms: Date.now(), steady_ms: performance.now() });

/** No two pages begin at the same instant. */
const PAGE = performance.timeOrigin;

let before: Clocks | undefined;
let wasHidden = false;
let timer: ReturnType<typeof setInterval> | undefined;
let watchers = 0;

function look(): void {
  const after = read();
  const by_ms = before ? stepBetween(before, after, wasHidden) : 0;
  if (by_ms !== 0) clockSteps.value = [...clockSteps.value, { by_ms, at_ms: after.wall_ms }];
  before = after;
  wasHidden = document.visibilityState === "hidden";
  now.value = after.wall_ms;
}

function run(): void {
  clearInterval(timer);
  timer = watchers > 0 && document.visibilityState === "visible" ? setInterval(look, TICK_MS) : undefined;
  look();
}

/** From the first watcher on the page notes when it goes out of sight, also while nobody watches: a step meanwhile is found by the next look. */
function watch(): void {
  watchers += 1;
  if (watchers > 1) return;
  if (!before) document.addEventListener("visibilitychange", run);
  for (const event of BACK) addEventListener(event, look);
  run();
}

function letGo(): void {
  watchers -= 1;
  if (watchers > 0) return;
  for (const event of BACK) removeEventListener(event, look);
  clearInterval(timer);
}

/** What this page saw of the clock so far, for whatever is drawn: it is drawn again when that changes. */
export function clockShown(): ClockSeen {
  return { page: PAGE, steps: clockSteps.value };
}

/** What this page saw of the clock until now: it looks once more, where it was ever asked to watch. Not while something is drawn. */
export function clockSeen(): ClockSeen {
  if (before) look();
  return clockShown();
}

/** The time now, ms UTC, for as long as the part that asks is shown. `isWanted` false: the time as it was, and no timer. */
export function useNow(isWanted = true): number {
  useEffect(() => {
    if (!isWanted) return undefined;
    watch();
    return letGo;
  }, [isWanted]);
  return now.value;
}
