/* The pulse by tapping: one very large place for the thumb, ten beats, the rate with its arithmetic; even or uneven is for the person to say.
   Taps live here alone; the finished rate is kept at once. Beats are taken when the finger comes down, not when it lifts. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { say } from "../../contract/words";
import { hundredths } from "../../parts/figures";
import type { Keeping } from "./keeping";
import { withoutSheet, type Open, type Sheet } from "./open";
import { BEATS, NO_TAPS, PAUSE_MOST_MS, pulseOf, tapped, type Pulse } from "./pulse_tap";
import { markedIrregular, pulseTaken } from "./series";

type PulseSheet = Extract<Sheet, { kind: "pulse" }>;

interface Props {
  open: Open;
  sheet: PulseSheet;
  keeping: Keeping;
}

/** Milliseconds as seconds with two places. */
function seconds(ms: number): string {
  return hundredths(Math.round(ms / 10));
}

export function PulseTap({ open, sheet, keeping }: Props): JSX.Element {
  const back = (): void => void keeping.act(withoutSheet);
  return (
    <>
      <h2>{say("pulse-title")}</h2>
      {sheet.pulse ? <Counted open={open} pulse={sheet.pulse} uneven={sheet.uneven === true} keeping={keeping} /> : <TapArea keeping={keeping} />}
      <button type="button" class="button key" onClick={back}>
        {say("readings-keys")}
      </button>
    </>
  );
}

/** Counts the beats; the tenth keeps the rate. A key held down is one beat. */
function TapArea({ keeping }: { keeping: Keeping }): JSX.Element {
  const [tapping, setTapping] = useState(NO_TAPS);
  const beat = (at_ms: number): void => {
    const next = tapped(tapping, at_ms);
    setTapping(next);
    const pulse = pulseOf(next.at_ms);
    if (pulse) void keeping.act((head) => pulseTaken(head, pulse));
  };
  const n = tapping.at_ms.length;
  const anew = tapping.anew && say(`pulse-anew-${tapping.anew.replaceAll("_", "-")}`, { seconds: String(PAUSE_MOST_MS / 1000) });
  return (
    <>
      <p class="small" role="status">
        {anew ?? say("pulse-hint", { beats: String(BEATS) })}
      </p>
      <p class="value">{say("pulse-count", { n: String(n), beats: String(BEATS) })}</p>
      <button
        type="button"
        class="button tap-area"
        onPointerDown={(event) => beat(event.timeStamp)}
        onKeyDown={(event) => {
          if (event.repeat) event.preventDefault();
        }}
        onClick={(event) => {
          if (event.detail === 0) beat(event.timeStamp);
        }}
      >
        {say("pulse-tap")}
      </button>
    </>
  );
}

function Counted({ open, pulse, uneven, keeping }: { open: Open; pulse: Pulse; uneven: boolean; keeping: Keeping }): JSX.Element {
  const facts = { n: String(pulse.intervals), seconds: seconds(pulse.span_ms), bpm: String(pulse.bpm) };
  const key = (word: string, act: (head: Open) => Open): JSX.Element => (
    <button type="button" class="button key" onClick={() => keeping.act(act)}>
      {say(word)}
    </button>
  );
  return (
    <div class="stack">
      <p role="status">
        <span class="value">{say("pulse-rate", facts)}</span>
      </p>
      <p class="small">{say("pulse-arithmetic", facts)}</p>
      <p>{say("pulse-intervals", { shortest: seconds(pulse.shortest_ms), longest: seconds(pulse.longest_ms) })}</p>
      <p class="small">{say(open.palpated_bpm === undefined ? "pulse-kept-latest" : "pulse-kept-next")}</p>
      {uneven ? (
        <>
          <p>{say("pulse-uneven-then")}</p>
          {key("pulse-mark-irregular", markedIrregular)}
        </>
      ) : (
        <div class="side-by-side">
          {key("pulse-even", withoutSheet)}
          {key("pulse-uneven", (head) => ({ ...head, sheet: { kind: "pulse", pulse, uneven: true } }))}
        </div>
      )}
      {key("pulse-again", (head) => ({ ...head, sheet: { kind: "pulse" } }))}
    </div>
  );
}
