/* What is seen above the keys: the verdict in words and shape, how many more, the row of readings and the newest value.
   Mean, edges and category stay hidden here unless the practice shows them: seeing them steers what people set aside. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { Guide } from "../../parts/guide";
import { Series } from "../../parts/series";
import { seriesShape, type Revealed } from "../../parts/series_shape";
import { VerdictShape } from "../../parts/verdict_shape";
import type { Assessment } from "../../rules/assessment";
import { thePhone } from "../place";
import { SHOW_MEAN } from "../phone/show_mean";
import { judged, mayCount, RULES, standingOf } from "./judged";
import { setNow, type Open, type Reading } from "./open";
import { secondLookLeft_s } from "./since";
import { meanLine, moreLine, phraseOf, rowTitle, standingShort, valueOf, verdictLine } from "./wording";

/** Width of the row beside the newest reading, and its height where mean and edges are drawn in it, in px. */
const ROW = { width: 232, height: 76 };

/** The same below what is urgent: that takes as much as a key, and the keys must stay where they are. */
const LOW_ROW = { width: 200, height: 56 };

/** Attempts in a row without a number after which it is asked why. No limit of a rule: a hint to look at animal and probe. */
const WITHOUT_NUMBER = 3;

/** Whether this practice shows mean and category while measuring; no until it is read. Read once: each digit is a commit too. */
function useShowsMean(): boolean {
  const [shows, setShows] = useState(false);
  useEffect(() => {
    thePhone().recall(SHOW_MEAN).then((kept) => setShows(kept === true), () => undefined);
  }, []);
  return shows;
}

/** Whether the latest attempts gave no number, however often it was tried. */
export function lacksNumbers(readings: readonly Reading[]): boolean {
  const latest = readings.slice(-WITHOUT_NUMBER);
  return latest.length === WITHOUT_NUMBER && latest.every(({ beyond }) => beyond === "no_sound" || beyond === "no_value");
}

/** What may be drawn in the row of the set now, where the practice shows it. */
function revealedOf(assessment: Assessment, at: number): Revealed | undefined {
  const average = assessment.sets[at]?.systolic;
  if (!average) return undefined;
  const placed = assessment.result_set === at && assessment.category !== undefined;
  return { mean: average.mean_tenths_mmhg / 10, edges: placed ? Object.values(RULES.documents.category.numbers.from_mmhg) : [] };
}

/** The verdict and the row; below what is urgent the row is low. */
export function Seen({ open, urgent }: { open: Open; urgent: boolean }): JSX.Element {
  const showsMean = useShowsMean();
  const set = setNow(open);
  const assessment = judged(open);
  const at = open.measurement.sets.length - 1;
  const verdict = assessment.sets[at]?.verdict;
  const looks = secondLookLeft_s(open, Date.now()) !== undefined;
  const more = looks ? undefined : moreLine(assessment, at, set.readings);
  return (
    <div class="seen">
      <p class="verdict" role="status">
        {verdict && assessment.advice !== "enough" && <VerdictShape verdict={verdict} />}
        <span>
          {at > 0 && `${say("set-number", { n: String(at + 1) })} · `}
          {verdictLine(assessment, at, open)}
          {more && <span class="small more-line"> {more}</span>}
        </span>
      </p>
      {showsMean && assessment.sets[at]?.systolic && (
        <p class="small">
          {meanLine(assessment.sets[at])} {assessment.result_set === at && assessment.category && say("sentence", { words: phraseOf(assessment) })}
        </p>
      )}
      {set.readings.length === 0 && <Guide step="readings" species={open.measurement.species} method={set.method} />}
      {lacksNumbers(set.readings) ? (
        <p class="small without-number" role="status">
          {say(`without-number-${set.method}`)}
        </p>
      ) : (
        <Row open={open} assessment={assessment} at={at} isLow={urgent} revealed={showsMean ? revealedOf(assessment, at) : undefined} />
      )}
    </div>
  );
}

interface RowProps {
  open: Open;
  assessment: Assessment;
  at: number;
  isLow: boolean;
  revealed: Revealed | undefined;
}

function Row({ open, assessment, at, isLow, revealed }: RowProps): JSX.Element | null {
  const { readings } = setNow(open);
  const latest = readings[readings.length - 1];
  if (!latest) return null;
  const taken = readings.map((reading) => ({ ...reading, counts: mayCount(standingOf(assessment, at, reading.id)) }));
  const { width, height } = isLow ? LOW_ROW : ROW;
  const shape = seriesShape(taken, width, revealed ? { revealed, height } : isLow ? { height } : {});
  return (
    <div class="row-and-latest">
      <Series shape={shape} label={rowTitle(readings)} />
      <Latest reading={latest} n={readings.length} standing={standingShort(assessment, at, latest)} />
      {shape.left_out > 0 && <p class="small latest-of">{say("row-latest", { n: String(shape.marks.length), all: String(readings.length) })}</p>}
    </div>
  );
}

/** The newest reading, large enough to be checked at arm's length before the next one. */
function Latest({ reading, n, standing }: { reading: Reading; n: number; standing: string }): JSX.Element {
  const value = valueOf(reading);
  const systolic = reading.systolic_mmhg;
  return (
    <p class="latest">
      <span class={systolic === undefined ? "value words" : "value"}>{systolic ?? value}</span>
      {systolic !== undefined && value !== String(systolic) && <strong>{value}</strong>}
      <span class="small">{say("reading-latest", { n: String(n), standing })}</span>
      {reading.palpated_bpm !== undefined && <span class="small">{say("pulse-felt", { bpm: String(reading.palpated_bpm) })}</span>}
    </p>
  );
}
