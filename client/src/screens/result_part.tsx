/* The result after *Finish*: the whole risk phrase, the number, how firm, which way it may be wrong, what next, and its basis.
   Every sentence comes from the assessment; *File* hands exactly that assessment on. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { BandLine } from "../parts/band_line";
import { cm, tenths } from "../parts/figures";
import { Series } from "../parts/series";
import { seriesShape } from "../parts/series_shape";
import type { Assessment, SetAssessment } from "../rules/assessment";
import { FilePart } from "./file_part";
import { Cares } from "./first_cautions";
import { judged, mayCount, RULES, standingOf } from "./judged";
import type { Keeping } from "./keeping";
import type { Open } from "./open";
import { WorkedOut } from "./worked_out";
import { adviceOf, boundsOf, cautionOf, meanLines, phraseOf, pressuresLine, resultSetOf, withheldOf } from "./wording";

interface Props {
  open: Open;
  keeping: Keeping;
}

/** Width of the row of readings over the whole page, in px. */
const ROW_WIDTH = 336;

const EDGES = Object.values(RULES.documents.category.numbers.from_mmhg);

/** The row of readings with what was hidden until now: the mean, its interval, the edges. */
function Row({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element | null {
  const at = assessment.result_set;
  const readings = open.measurement.sets[at]?.readings ?? [];
  const average = resultSetOf(assessment).systolic;
  if (readings.length === 0) return null;
  const taken = readings.map((reading) => ({ ...reading, counts: mayCount(standingOf(assessment, at, reading.id)) }));
  const half = average?.ci95_half_width_tenths_mmhg;
  const revealed = average && {
    mean: average.mean_tenths_mmhg / 10, edges: EDGES, ...(half === undefined ? {} : { half_width: half / 10 }),
  };
  return <Series shape={seriesShape(taken, ROW_WIDTH, revealed)} label={say("row-title")} />;
}

function Place({ set }: { set: SetAssessment }): JSX.Element | null {
  const { systolic } = set;
  if (!systolic || set.verdict !== "steady") return null;
  const half_width = systolic.ci95_half_width_tenths_mmhg;
  return (
    <BandLine
      mean={systolic.mean_tenths_mmhg}
      edges={EDGES}
      label={say("band-line", { mean: tenths(systolic.mean_tenths_mmhg) })}
      {...(half_width === undefined ? {} : { half_width })}
    />
  );
}

function HeightLine({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element | null {
  const { height } = resultSetOf(assessment);
  const above = open.measurement.sets[assessment.result_set]?.cuff_above_heart_mm;
  if (!height || above === undefined) return null;
  const where = say(above > 0 ? "height-word-above" : "height-word-below");
  return <p>{say("result-height", { cm: cm(Math.abs(above)), where, mean: tenths(height.corrected_mean_tenths_mmhg) })}</p>;
}

function Cautions({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element {
  const cautions = assessment.cautions ?? [];
  const of = (weight: string): string[] =>
    cautions.filter((caution) => caution.weight === weight).map(({ key, direction }) => cautionOf(key, direction, open.measurement.species));
  const [headline, minor] = [of("headline"), of("minor")];
  return (
    <section class="stack cautions">
      <h2>{say("cautions-title")}</h2>
      {assessment.leaning && (
        <p>
          <strong>{say(`leaning-${assessment.leaning}`)}</strong>
        </p>
      )}
      {cautions.length === 0 && <p>{say("cautions-none")}</p>}
      <ul>{headline.map((line) => <li key={line}>{line}</li>)}</ul>
      {minor.length > 0 && (
        <>
          <h3>{say("cautions-minor")}</h3>
          <ul>{minor.map((line) => <li key={line}>{line}</li>)}</ul>
        </>
      )}
    </section>
  );
}

function Used({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element {
  const at = assessment.result_set;
  const all = open.measurement.sets[at]?.readings.length ?? 0;
  const used = resultSetOf(assessment).systolic?.n ?? 0;
  return (
    <p class="small">
      {open.measurement.sets.length > 1 && `${say("result-set", { n: String(at + 1) })} `}
      {say("result-used", { used: String(used), all: String(all) })}
    </p>
  );
}

export function ResultPart({ open, keeping }: Props): JSX.Element {
  const assessment = judged(open);
  const set = resultSetOf(assessment);
  const edges = assessment.near_edges_mmhg;
  const lines = [withheldOf(assessment), ...meanLines(set), ...pressuresLine(set), boundsOf(set)].filter(Boolean);
  const advice = adviceOf(assessment);
  return (
    <div class="part result">
      <section class="stack" aria-label={say("part-result")}>
        <p class="phrase">{phraseOf(assessment)}</p>
        {assessment.category && <p class="firmness">{say(`firmness-${assessment.firmness.replaceAll("_", "-")}`)}</p>}
        <Place set={set} />
        {lines.map((line) => <p key={line}>{line}</p>)}
        {edges && edges.length > 0 && <p>{say("near-edges", { n: edges.length, edges: edges.join(", ") })}</p>}
        <HeightLine open={open} assessment={assessment} />
        <Row open={open} assessment={assessment} />
        <Used open={open} assessment={assessment} />
      </section>
      {advice && <p class="note">{advice}</p>}
      <Cautions open={open} assessment={assessment} />
      <FilePart open={open} keeping={keeping} />
      <WorkedOut measurement={open.measurement} assessment={assessment} />
      <details class="more">
        <summary>{say("first-cautions-title")}</summary>
        <Cares />
      </details>
    </div>
  );
}
