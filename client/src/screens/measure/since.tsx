/* Quiet counting beside the readings: seconds since the last one, what is left of a second look, and whether the screen may sleep.
   Only instants are kept, so that it is exact after a hidden or killed page. Silent: nothing here is announced or sounds. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { theWake } from "../../parts/wake";
import { RULES } from "./judged";
import { setNow, type Open } from "./open";

/** Above this only whole minutes are said, in s. */
const IN_SECONDS_MOST_S = 600;

/** The instant, anew every second while the page is seen. */
function useNow(): number {
  const [now_ms, setNow_ms] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow_ms(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return now_ms;
}

/** When the latest reading of the set was taken; undefined without one, or when its time is not known. */
export function lastTakenMs(open: Open): number | undefined {
  const { readings } = setNow(open);
  const taken_s = readings[readings.length - 1]?.taken_s;
  const began_ms = open.measurement.started_at_ms;
  return taken_s === undefined || began_ms === undefined ? undefined : began_ms + taken_s * 1000;
}

/** The second look that runs or is over with nothing measured since, in ms left (0 when over); undefined when there is none. */
export function secondLookLeftMs(open: Open, now_ms: number): number | undefined {
  const last = lastTakenMs(open);
  const { quiet } = open;
  if (!quiet || last === undefined || quiet.from_ms < last) return undefined;
  return Math.max(0, quiet.from_ms + quiet.need_s * 1000 - now_ms);
}

/** 75 s as 1:15. */
function clock(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

function sinceWords(open: Open, now_ms: number): string | undefined {
  const left_ms = secondLookLeftMs(open, now_ms);
  if (left_ms !== undefined) return left_ms > 0 ? say("second-look-left", { time: clock(Math.ceil(left_ms / 1000)) }) : say("second-look-over");
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
