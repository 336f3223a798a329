/* Quiet counting beside the readings: seconds since the last one, what is left of a second look, and whether the screen may sleep.
   Only instants are kept, so that it is exact after a hidden or killed page. Silent: nothing here is announced or sounds. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { useNow } from "../../parts/now";
import { theWake } from "../../parts/wake";
import { RULES } from "./judged";
import { setNow, type Open } from "./open";
import { clockOf, left_s, quietNow } from "./quiet";

/** Above this only whole minutes are said, in s. */
const IN_SECONDS_MOST_S = 600;

/** When the latest reading of the set was taken; undefined without one, or when its time is not known. */
export function lastTakenMs(open: Open): number | undefined {
  const { readings } = setNow(open);
  const taken_s = readings[readings.length - 1]?.taken_s;
  const began_ms = open.measurement.started_at_ms;
  return taken_s === undefined || began_ms === undefined ? undefined : began_ms + taken_s * 1000;
}

/** Seconds left of the second look that runs (0 when it is over); undefined when there is none since the latest reading. */
export function secondLookLeft_s(open: Open, now_ms: number): number | undefined {
  const quiet = quietNow(open, now_ms);
  return quiet && setNow(open).readings.length > 0 ? left_s(quiet, now_ms) : undefined;
}

function sinceWords(open: Open, now_ms: number): string | undefined {
  const look_s = secondLookLeft_s(open, now_ms);
  if (look_s !== undefined) return look_s > 0 ? say("second-look-left", { time: clockOf(look_s) }) : say("second-look-over");
  const last = lastTakenMs(open);
  if (last === undefined || now_ms < last) return undefined;
  const since_s = Math.floor((now_ms - last) / 1000);
  const advised = RULES.documents.cautions.numbers.gap_short_s;
  if (since_s >= IN_SECONDS_MOST_S) return say("since-minutes", { n: String(Math.floor(since_s / 60)) });
  return say(since_s < advised ? "since-short" : "since-seconds", { n: String(since_s), advised: String(advised) });
}

export function Since({ open }: { open: Open }): JSX.Element | null {
  const words = sinceWords(open, useNow());
  const sleeps = theWake().state.value === "refused";
  if (words === undefined && !sleeps) return null;
  return (
    <p class="small since">
      {words} {sleeps && say("screen-may-sleep")}
    </p>
  );
}
