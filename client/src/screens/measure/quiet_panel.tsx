/* The quiet time of this visit, large: start and stop by one tap, what is left and at what o'clock it is ready. Silent; its end is told
   by words, a filled mark and the whole panel turned over. Must not keep anybody from going on. */
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { say } from "../../contract/words";
import { tenths, timeOfDay } from "../../parts/figures";
import { clockShown, useNow } from "../../parts/now";
import { doubtOf } from "../round/quiet_running";
import type { Keeping } from "./keeping";
import type { Open } from "./open";
import { clockOf, done_permille, left_s, quietGoesOn, quietOfVisit, quietStarted, quietStopped, readyAt_ms, waited_s, withSteps, type Quiet } from "./quiet";
import { quietNeed_s } from "./quiet_need";

interface Props {
  open: Open;
  keeping: Keeping;
  /** The way on, which stands beside the panel's own keys. */
  children: ComponentChildren;
}

interface Begun extends Pick<Props, "keeping" | "children"> {
  quiet: Quiet;
}

const minutes = (seconds: number): string => tenths(Math.floor((seconds * 10) / 60));

function start(keeping: Keeping): void {
  const now_ms = Date.now();
  void keeping.act((head) => quietStarted(head, now_ms, quietNeed_s(head.measurement.species)));
}

function stop(keeping: Keeping): void {
  const now_ms = Date.now();
  void keeping.act((head) => quietStopped(head, now_ms));
}

function Key({ word, act, onTap }: { word: string; act?: boolean; onTap: () => void }): JSX.Element {
  return (
    <button type="button" class={act ? "button act" : "button"} onClick={onTap}>
      {say(word)}
    </button>
  );
}

/** The panel of a quiet time that was started. */
function Running({ quiet, keeping, now_ms, children }: Begun & { now_ms: number }): JSX.Element {
  const isOver = left_s(quiet, now_ms) === 0;
  const at = timeOfDay(readyAt_ms(quiet));
  const doubt = doubtOf(quiet, now_ms);
  return (
    <>
      <div class="quiet-panel" data-over={String(isOver)}>
        <p class="quiet-left" role="timer">{isOver ? say("quiet-over") : say("quiet-left", { left: clockOf(left_s(quiet, now_ms)) })}</p>
        <p>
          {isOver
            ? say("quiet-over-times", { at, waited: clockOf(waited_s(quiet, now_ms) ?? 0) })
            : say("quiet-times", { from: timeOfDay(quiet.from_ms), at })}
        </p>
        {doubt && <p class="quiet-doubt">{doubt}</p>}
        <span class="quiet-line" aria-hidden="true">
          <span style={`inline-size: ${done_permille(quiet, now_ms) / 10}%`} />
        </span>
      </div>
      <p class="unseen" role="status">{isOver ? say("quiet-over") : ""}</p>
      <div class="side-by-side">
        <Key word={isOver ? "quiet-again" : "quiet-stop"} onTap={() => (isOver ? start(keeping) : stop(keeping))} />
        {children}
      </div>
    </>
  );
}

function Stopped({ quiet, keeping, children }: Begun): JSX.Element {
  return (
    <>
      <div class="quiet-panel" data-over="false">
        <p class="quiet-left">{say("quiet-stopped", { waited: clockOf(waited_s(quiet, quiet.from_ms) ?? 0) })}</p>
      </div>
      <div class="side-by-side">
        <Key word="quiet-go-on" onTap={() => keeping.act(quietGoesOn)} />
        <Key word="quiet-again" onTap={() => start(keeping)} />
        {children}
      </div>
    </>
  );
}

function NotStarted({ open, keeping, children }: Props): JSX.Element {
  return (
    <>
      <p>{say("quiet-need", { minutes: minutes(quietNeed_s(open.measurement.species)) })}</p>
      <div class="side-by-side">
        <Key word="quiet-start" act={open.measurement.rest_s === undefined} onTap={() => start(keeping)} />
        {children}
      </div>
    </>
  );
}

/** What stands beside: typed minutes, or what the first reading wrote down. */
function Noted({ open, quiet }: Pick<Props, "open"> & { quiet: Quiet | undefined }): JSX.Element | null {
  const { rest_s } = open.measurement;
  if (rest_s !== undefined) return <p class="small">{say(open.texts["rest"]?.trim() ? "quiet-typed" : "quiet-noted", { minutes: minutes(rest_s) })}</p>;
  return quiet ? <p class="small">{say("quiet-any-time")}</p> : null;
}

/** While one runs the whole of it is brought into sight, its keys too; nothing is scrolled where it is in sight already. */
function Frame({ runs, children }: { runs: boolean; children: ComponentChildren }): JSX.Element {
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (runs) place.current?.scrollIntoView({ block: "nearest" });
  }, [runs]);
  return (
    <section class="stack" ref={place} aria-labelledby="quiet-title">
      <h2 id="quiet-title">{say("quiet-title")}</h2>
      {children}
    </section>
  );
}

/** Not started, running or over, or stopped. */
export function QuietPanel({ open, keeping, children }: Props): JSX.Element {
  const now_ms = useNow(open.quiet !== undefined && open.quiet.to_ms === undefined);
  const quiet = quietOfVisit(withSteps(open, clockShown()), Date.now());
  const runs = quiet !== undefined && quiet.to_ms === undefined;
  return (
    <Frame runs={runs}>
      {!quiet && <NotStarted open={open} keeping={keeping}>{children}</NotStarted>}
      {quiet && runs && <Running quiet={quiet} keeping={keeping} now_ms={now_ms}>{children}</Running>}
      {quiet && !runs && <Stopped quiet={quiet} keeping={keeping}>{children}</Stopped>}
      <Noted open={open} quiet={quiet} />
    </Frame>
  );
}
