/* Which sentence of words/en.ftl says what the rules answered, with its figures formatted. No sentence stands here,
   and nothing is decided here: codes and facts in, words out. */
import { say } from "../../contract/words";
import { cm, permille, tenths } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import type { Assessment, SetAssessment } from "../../rules/assessment";
import { RULES, standingOf } from "./judged";
import type { Open, Reading, Saying } from "./open";
import { shortOf } from "./series";
import type { Act } from "./undo";

const NUMBERS = {
  agreement: RULES.documents.agreement.numbers,
  bounds: RULES.documents.bounds.numbers,
  category: RULES.documents.category.numbers,
  cautions: RULES.documents.cautions.numbers,
};

/** The pressures there are, each with its name; empty without one. */
function pressures({ systolic, mean, diastolic }: Saying["facts"]): string {
  if (systolic === undefined) return "";
  const word = mean && diastolic ? "result-three" : mean ? "result-systolic-mean" : "result-systolic-diastolic";
  return say(word, { systolic, mean: mean ?? "", diastolic: diastolic ?? "" });
}

/** Says a kept saying; a `field` among its facts that is a field of the pad is put into words, and numbers out of order are named. */
export function saying({ word, facts }: Saying): string {
  if (word === "impossible-order") return say(word, { numbers: pressures(facts) }).trim();
  const { field } = facts;
  const isPad = typeof field === "string" && ["systolic", "mean", "diastolic", "pulse"].includes(field);
  return say(word, isPad ? { ...facts, field: say(`pad-${field}`) } : facts);
}

/** Names an act that can be taken back. */
export function sayAct({ word, facts }: Act): string {
  return say(word, word === "act-choice" ? { field: say(facts["field"] ?? "part-calm") } : facts);
}

/** A reading in few characters: its numbers, or why there are none. */
export function valueOf(reading: Pick<Reading, "id" | "beyond" | "systolic_mmhg" | "mean_mmhg" | "diastolic_mmhg">): string {
  return reading.beyond ? say(`beyond-${kebab(reading.beyond)}`) : shortOf(reading);
}

/** The row of readings for those who hear it: every value in the order taken. */
export function rowTitle(readings: readonly Reading[]): string {
  return say("row-title", { values: readings.map(valueOf).join(", ") });
}

/** What the shapes of the row that are no circle mean, of those that occur. */
export function shapesLine(readings: readonly Reading[]): string {
  const words = [
    ...(readings.some(({ beyond }) => beyond === "above_gauge") ? ["row-legend-above"] : []),
    ...(readings.some(({ beyond }) => beyond && beyond !== "above_gauge") ? ["row-legend-gap"] : []),
  ];
  return words.map((word) => say(word)).join(" ");
}

/** What a reading counts for, in words. */
export function standingWords(assessment: Assessment, set: number, reading: Reading): string {
  const standing = standingOf(assessment, set, reading.id) ?? "provisional";
  const reason = reading.set_aside ? say(`set-aside-${kebab(reading.set_aside)}`) : "";
  return say(`standing-${kebab(standing)}`, { reason });
}

/** The same beside its numbers, where there is little room: that it is not possible was asked about. */
export function standingShort(assessment: Assessment, set: number, reading: Reading): string {
  const isImpossible = !reading.set_aside && standingOf(assessment, set, reading.id) === "impossible";
  return isImpossible ? say("standing-impossible-short") : standingWords(assessment, set, reading);
}

/** The verdict on one set in one line; suspects are named, the person decides. */
export function verdictLine(assessment: Assessment, set: number, open: Pick<Open, "measurement">): string {
  const answer = assessment.sets[set];
  const readings = open.measurement.sets[set]?.readings ?? [];
  if (!answer || readings.length === 0) return say("verdict-none");
  if (assessment.advice === "enough" && set === assessment.result_set) return boundsOf(answer, readings) ?? say("verdict-none");
  const suspects = readings.filter(({ id }) => answer.suspects?.includes(id)).map(valueOf);
  if (suspects.length > 0) return say("verdict-scattered-suspects", { values: suspects.join(", ") });
  const broken = answer.verdict === "too_few" && readings.some(({ beyond, set_aside }) => beyond === "above_gauge" && !set_aside);
  return say(broken ? "verdict-too-few-again" : `verdict-${kebab(answer.verdict)}`, { n: answer.readings_needed ?? 0 });
}

/** How many more after the verdict; undefined where the verdict says it already. */
export function moreLine(assessment: Assessment, set: number, readings: readonly Reading[]): string | undefined {
  const { verdict, readings_needed } = assessment.sets[set] ?? {};
  const advice = set === assessment.result_set ? assessment.advice : undefined;
  if (readings.length === 0) return say("more-first", { first: RULES.documents.standing.numbers.first_not_counted, n: readings_needed ?? 0 });
  if (advice === "enough") return undefined;
  if (advice === "stop_today") return say("advice-stop-today");
  if (verdict === "too_few") return undefined;
  return say(verdict !== "steady" ? "more-until" : advice === "second_look" ? "more-second-look" : "more-none");
}

/** The whole risk phrase, or that it was not placed; never a bare word. */
export function phraseOf(assessment: Assessment): string {
  const { category } = assessment;
  if (!category) return say("withheld-title");
  const { low, moderate, high } = NUMBERS.category.from_mmhg;
  const edges = { minimal: [low, low], low: [low, moderate - 1], moderate: [moderate, high - 1], high: [high, high] }[category];
  return say(`category-${category}`, { low: String(edges[0]), high: String(edges[1]) });
}

/** Why no band was given; undefined when there is one. */
export function withheldOf({ category_withheld }: Assessment): string | undefined {
  if (!category_withheld) return undefined;
  const { adult_months, low_pressure_mmhg } = NUMBERS.category;
  return say(`withheld-${kebab(category_withheld)}`, { months: String(adult_months), low: String(low_pressure_mmhg) });
}

/** The set the result speaks of. */
export function resultSetOf(assessment: Assessment): SetAssessment {
  const set = assessment.sets[assessment.result_set];
  if (!set) throw new Error("an assessment names one of its sets");
  return set;
}

/** One caution as a sentence with its figures and the way it bends the value. */
export function cautionOf(key: string, direction: string, { species, rest_s }: Pick<Measurement, "species" | "rest_s">): string {
  const numbers = NUMBERS.cautions;
  const facts = {
    minutes: String(numbers.rest_short_s[species] / 60),
    cm: cm(key === "height_off" ? numbers.height_off_mm : numbers.oscillometric_small_mm),
    from: String(numbers.oscillometric_high_mmhg),
    one_in: String(numbers.many_set_aside_one_in),
    seconds: String(numbers.gap_short_s),
    step: String(numbers.gauge_step_mmhg),
  };
  return say("caution-line", { caution: say(`caution-${key === "rest_short" && rest_s === undefined ? "rest-not-noted" : kebab(key)}`, facts), direction: say(`direction-${direction}`) });
}

/** What to do now, where the rules advise anything. */
export function adviceOf({ advice }: Assessment): string | undefined {
  if (!advice) return undefined;
  const facts = { from: String(NUMBERS.bounds.decides_from_mmhg), minutes: String(NUMBERS.agreement.second_look.rest_s / 60) };
  return say(`advice-${kebab(advice)}`, facts);
}

/**
 * What can be said without an average. The rule looks at the latest readings that may count: only where what it says also
 * holds for every number taken does the sentence say "every reading".
 */
export function boundsOf({ bounds, readings: judged = [] }: SetAssessment, readings: readonly Reading[]): string | undefined {
  if (!bounds) return undefined;
  const { at_least_mmhg: least, below_mmhg: below } = bounds;
  const numbers = readings.flatMap(({ systolic_mmhg: number }) => (number === undefined ? [] : [number]));
  const holds = numbers.every((number) => (least === undefined || number >= least) && (below === undefined || number < below));
  const open = new Set(judged.filter(({ standing }) => standing === "provisional").map(({ id }) => id));
  const looked = readings.filter(({ id, beyond, set_aside }) => open.has(id) || (beyond === "above_gauge" && !set_aside)).length;
  const who = holds ? say("bounds-every") : say("bounds-latest", { n: Math.min(looked, NUMBERS.bounds.of_latest) });
  const word = least === undefined ? "bounds-below" : below === undefined ? "bounds-at-least" : "bounds-both";
  return say(word, { who, at_least: String(least ?? ""), below: String(below ?? "") });
}

/** Why no band was given, where excitement is not what bends the value. */
const CALM_ANYWAY = ["low_pressure", "sedated"];

/** The mean in one line, and whether it is one to go by. */
export function meanLine(set: SetAssessment): string {
  const { systolic, verdict } = set;
  if (!systolic) return say("result-no-mean");
  const mean = tenths(systolic.mean_tenths_mmhg);
  if (verdict === "steady") return say("result-mean-line", { mean, n: systolic.n });
  return say(verdict === "too_few" ? "result-mean-too-few" : "result-mean-provisional", { mean });
}

/**
 * What belongs to the mean: its interval, its spread, and what is not in it; without one, what was above the gauge. That a tense animal reads too high is left unsaid
 * where nobody should look that way: of a low pressure and of a sedated animal.
 */
export function meanLines(set: SetAssessment, readings: readonly Reading[], withheld?: string): string[] {
  const { systolic } = set;
  const above = readings.filter(({ beyond, set_aside }) => beyond === "above_gauge" && !set_aside).length;
  if (!systolic) return above > 0 ? [say("result-above-only", { n: above })] : [];
  const steady = set.verdict === "steady";
  const lines = !steady && above > 0 ? [say("result-above-gauge", { n: above })] : [];
  const { ci95_half_width_tenths_mmhg: half } = systolic;
  if (half !== undefined) {
    const [low, high] = [Math.floor((systolic.mean_tenths_mmhg - half) / 10), Math.ceil((systolic.mean_tenths_mmhg + half) / 10)];
    lines.push(say("result-interval", { low: String(low), high: String(high) }));
  }
  if (steady && !CALM_ANYWAY.includes(withheld ?? "")) lines.push(say("verdict-steady-more"));
  const spread = spreadLine(set);
  return spread ? [...lines, spread] : lines;
}

/** How far the readings of the mean lie apart; undefined for fewer than two. */
export function spreadLine({ systolic }: SetAssessment): string | undefined {
  const { sd_tenths_mmhg: sd, spread_permille: spread } = systolic ?? {};
  return sd === undefined || spread === undefined ? undefined : say("result-spread", { spread: permille(spread), sd: tenths(sd) });
}

/** How many readings of the result's set were used, and of which set where there are several. */
export function usedLine(measurement: Measurement, assessment: Assessment): string {
  const at = assessment.result_set;
  const all = measurement.sets[at]?.readings.length ?? 0;
  const used = say("result-used", { used: String(resultSetOf(assessment).systolic?.n ?? 0), all: String(all) });
  return measurement.sets.length > 1 ? `${say("result-set", { n: String(at + 1) })} ${used}` : used;
}

/** What the height of the cuff would change; undefined where nothing is corrected. */
export function heightLine(measurement: Measurement, assessment: Assessment): string | undefined {
  const { height } = resultSetOf(assessment);
  const above = measurement.sets[assessment.result_set]?.cuff_above_heart_mm;
  if (!height || above === undefined) return undefined;
  const where = say(above > 0 ? "height-word-above" : "height-word-below");
  const line = say("result-height", { cm: cm(Math.abs(above)), where, mean: tenths(height.corrected_mean_tenths_mmhg) });
  return assessment.category ? `${line} ${say("result-height-band")}` : line;
}

/** Systolic, mean and diastolic in one line of words, and pulse apart; nothing of what was not measured. */
export function pressuresLine(set: SetAssessment): string[] {
  const text = (average: { mean_tenths_mmhg: number } | undefined): string => (average ? tenths(average.mean_tenths_mmhg) : "");
  const facts = { systolic: text(set.systolic), mean: text(set.mean), diastolic: text(set.diastolic) };
  const lines = set.mean || set.diastolic ? [pressures(facts)] : [];
  return set.pulse ? [...lines, say("result-pulse", { pulse: tenths(set.pulse.mean_tenths_bpm) })] : lines;
}
