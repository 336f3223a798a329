/* The result after *Finish*: the whole risk phrase, the number, how firm, which way it may be wrong, what next, and its basis.
   Every sentence comes from the assessment; *File* hands exactly that assessment on. */
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { say } from "../../contract/words";
import { BandLine } from "../../parts/band_line";
import { tenths } from "../../parts/figures";
import { Guide } from "../../parts/guide";
import { Series } from "../../parts/series";
import { kebab } from "../../parts/word_ids";
import { seriesRows } from "../../parts/series_shape";
import type { Assessment, SetAssessment } from "../../rules/assessment";
import { RESULT_ID, useAfterChoice } from "./after_choice";
import { ChooseAnimal } from "./choose_animal";
import { FilePart } from "./file_part";
import { Cares } from "../round/first_cautions";
import { TrainingNote } from "../phone/training_note";
import { LimbOut } from "./limb_out";
import { judged, mayCount, RULES, standingOf } from "./judged";
import type { Keeping } from "./keeping";
import { FirstOfAll, NotToday, notTodayLine } from "./not_today";
import type { Open, Reading } from "./open";
import { offersSecondLook, SecondLook } from "./second_look";
import { wentOn } from "./series";
import { SetAsideLines } from "./set_aside_lines";
import { urgentOf } from "./urgent";
import { UrgentFolded, UrgentPanel } from "./urgent_panel";
import { WorkedOut } from "./worked_out";
import {
  adviceOf, boundsOf, cautionOf, heightLine, meanLine, meanLines, phraseOf, pressuresLine, resultSetOf, rowTitle, shapesLine, usedLine, withheldOf,
} from "./wording";

interface Props {
  open: Open;
  keeping: Keeping;
}

/** Width of the row of readings over the whole page, in px. */
const ROW_WIDTH = 336;

const EDGES = Object.values(RULES.documents.category.numbers.from_mmhg);

/** Whether edges may be drawn: a mark between two edges says a band, also where the words say that there is none. */
function showsEdges({ category, sets, result_set }: Assessment): boolean {
  return category !== undefined || sets[result_set]?.bounds !== undefined;
}

/** The row of readings with what was hidden until now: the mean, its interval, the edges. All of them, in as many rows as it takes. */
function Row({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element | null {
  const at = assessment.result_set;
  const readings = open.measurement.sets[at]?.readings ?? [];
  const average = resultSetOf(assessment).systolic;
  if (readings.length === 0) return null;
  const taken = readings.map((reading) => ({ ...reading, counts: mayCount(standingOf(assessment, at, reading.id)) }));
  const half = average?.ci95_half_width_tenths_mmhg;
  const isBounded = resultSetOf(assessment).bounds !== undefined;
  const revealed = average && {
    edges: showsEdges(assessment) ? EDGES : [],
    ...(isBounded ? {} : { mean: average.mean_tenths_mmhg / 10, ...(half === undefined ? {} : { half_width: half / 10 }) }),
  };
  const legend = !revealed || isBounded ? "row-legend" : half === undefined ? "row-legend-mean" : "row-legend-interval";
  const rows = seriesRows(taken, ROW_WIDTH, revealed);
  return (
    <>
      {rows.map((row, n) => <Series key={n} shape={row.shape} label={rowTitle(row.readings)} />)}
      <p class="small">{say(legend)} {shapesLine(readings)}</p>
    </>
  );
}

/** The place of the mean among the edges; nothing without a band, or the picture would place what the words do not. */
function Place({ set, placed }: { set: SetAssessment; placed: boolean }): JSX.Element | null {
  const { systolic } = set;
  if (!systolic || !placed) return null;
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

function Cautions({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element {
  const cautions = assessment.cautions ?? [];
  const of = (weight: string): string[] =>
    cautions.filter((caution) => caution.weight === weight).map(({ key, direction }) => cautionOf(key, direction, open.measurement));
  const [headline, minor] = [of("headline"), of("minor")];
  return (
    <section class="stack cautions">
      <h2>{say("cautions-title")}</h2>
      {assessment.leaning && !assessment.category && (
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

/** The whole phrase; where readings bound the pressure without an average, the bound stands first. */
function Headline({ assessment, readings }: { assessment: Assessment; readings: readonly Reading[] }): JSX.Element {
  const bounds = boundsOf(resultSetOf(assessment), readings);
  return (
    <>
      {bounds && <p class="phrase">{bounds}</p>}
      <p class={bounds ? "verdict-words" : "phrase"}>{phraseOf(assessment)}</p>
    </>
  );
}

/** How firm it is, which way it may be wrong, and what lies close by; without a band the reason why there is none. */
function HowFirm({ assessment }: { assessment: Assessment }): JSX.Element {
  const edges = assessment.near_edges_mmhg ?? [];
  const near = edges.length > 0 ? say("near-edges", { n: edges.length, edges: edges.join(", ") }) : "";
  const leaning = assessment.leaning ? say(`leaning-${assessment.leaning}`) : "";
  if (!assessment.category) return <p>{withheldOf(assessment)}</p>;
  return (
    <p class="firmness">
      {say(`firmness-${assessment.firmness.replaceAll("_", "-")}`)} {leaning} {near}
    </p>
  );
}

interface NextProps extends Props {
  assessment: Assessment;
  urgent: boolean;
}

/** What next, in the words of the rules, and the one tap that begins it; nothing after a stop, and no going on where the animal comes first. */
function Next({ open, keeping, assessment, urgent }: NextProps): JSX.Element | null {
  const advice = adviceOf(assessment);
  if (!advice || open.measurement.outcome || (urgent && assessment.advice === "go_on")) return null;
  return (
    <div class="note stack">
      <p>{advice}</p>
      {offersSecondLook(open, assessment) && <SecondLook keeping={keeping} look="button wide" />}
      {assessment.advice === "go_on" && (
        <button type="button" class="button wide" onClick={() => keeping.act(wentOn)}>
          {say("stop-went-on")}
        </button>
      )}
    </div>
  );
}

/** Everything that can wait until the result has been taken in. */
function Details({ open, assessment }: { open: Open; assessment: Assessment }): JSX.Element {
  const set = resultSetOf(assessment);
  const readings = open.measurement.sets[assessment.result_set]?.readings ?? [];
  const lines = [...meanLines(set, readings, assessment.category_withheld), ...pressuresLine(set)];
  const height = heightLine(open.measurement, assessment);
  return (
    <>
      {lines.map((line) => <p key={line}>{line}</p>)}
      {height && <p>{height}</p>}
      <Row open={open} assessment={assessment} />
      <p class="small">{usedLine(open.measurement, assessment)}</p>
      <SetAsideLines measurement={open.measurement} />
    </>
  );
}

/** What came of the visit: that it was not measured today, or the result. */
export function ResultPart({ open, keeping }: Props): JSX.Element {
  useEffect(() => scrollTo(0, 0), [open.choosing]);
  useAfterChoice(open.choosing === true);
  if (open.choosing) return <Choosing open={open} keeping={keeping} />;
  if (open.measurement.outcome?.kind === "not_today") {
    return (
      <>
        <TrainingNote />
        <NotToday open={open} keeping={keeping} />
      </>
    );
  }
  return <Measured open={open} keeping={keeping} />;
}

/** The choice of an animal first; what is urgent stays above it, and the result folded under it. */
function Choosing({ open, keeping }: Props): JSX.Element {
  const isMeasured = open.measurement.outcome?.kind !== "not_today";
  const urgent = isMeasured ? urgentOf(open.measurement, judged(open)) : undefined;
  return (
    <div class="part result">
      <TrainingNote />
      {urgent && <UrgentFolded urgent={urgent} />}
      <ChooseAnimal open={open} keeping={keeping}>
        {isMeasured ? <Outcome open={open} keeping={keeping} /> : <p>{notTodayLine(open)}</p>}
      </ChooseAnimal>
    </div>
  );
}

/** The result itself, in the order in which a tired reader needs it. */
function Outcome({ open, keeping }: Props): JSX.Element {
  const assessment = judged(open);
  const set = resultSetOf(assessment);
  const readings = open.measurement.sets[assessment.result_set]?.readings ?? [];
  const urgent = urgentOf(open.measurement, assessment);
  const { outcome } = open.measurement;
  return (
    <section class="stack" aria-label={say("part-result")} id={RESULT_ID} tabIndex={-1}>
      {urgent && <UrgentPanel urgent={urgent} />}
      {outcome && <p class="note">{say(`result-${kebab(outcome.kind)}`, { n: countOf(open), why: say(`why-stopped-${kebab(outcome.why)}`) })}</p>}
      <FirstOfAll open={open} />
      <LimbOut open={open} />
      <Headline assessment={assessment} readings={readings} />
      <Place set={set} placed={assessment.category !== undefined} />
      <p class={set.bounds ? "" : "mean-line"}>{meanLine(set)}</p>
      <HowFirm assessment={assessment} />
      <Next open={open} keeping={keeping} assessment={assessment} urgent={urgent !== undefined} />
      <Details open={open} assessment={assessment} />
    </section>
  );
}

function Measured({ open, keeping }: Props): JSX.Element {
  const assessment = judged(open);
  return (
    <div class="part result">
      <TrainingNote />
      <Outcome open={open} keeping={keeping} />
      <Cautions open={open} assessment={assessment} />
      <Guide step="result" species={open.measurement.species} method={open.measurement.sets[assessment.result_set]?.method ?? "doppler"} />
      <WorkedOut measurement={open.measurement} assessment={assessment} />
      <details class="more">
        <summary>{say("first-cautions-title")}</summary>
        <Cares />
      </details>
      <FilePart open={open} keeping={keeping} />
    </div>
  );
}

/** Readings of all sets, set aside ones too. */
function countOf({ measurement }: Open): number {
  return measurement.sets.reduce((sum, { readings }) => sum + readings.length, 0);
}
