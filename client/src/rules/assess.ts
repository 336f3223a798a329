/*
 * The order of the rules, and nothing else: the only file that knows it.
 * It never raises for a poor measurement; the measurement has already passed the contract's check.
 */
import type { Assessment, FinalStanding, SetAssessment } from "./assessment.ts";
import type { RuleDocuments, RuleSet } from "./documents.ts";
import type { Measurement, MeasurementSet, Reading } from "./measurement.ts";
import type { JudgedSet } from "./judged_set.ts";
import { adviceWithCategory, adviceWithoutWindow, agreementOf, type Advice, type Agreement } from "./agreement.ts";
import { averagesOf } from "./averaging.ts";
import { boundsDecide, boundsOf } from "./bounds.ts";
import { firmnessOf, nearEdges, placingOf, resultSet, type Placing } from "./category.ts";
import { cautionsOf, hasHeadline, leaningOf } from "./cautions.ts";
import { cuffFit, type CuffFit } from "./cuff.ts";
import { correctedMean, correctionHundredths, heightOf } from "./height.ts";
import { eligibleOf, standingsOf, type NumberedReading, type Standing } from "./standing.ts";
import { meanOf, type Mean } from "./whole_numbers.ts";

function cuffOf(measurement: Measurement, given: MeasurementSet, documents: RuleDocuments): CuffFit | undefined {
  const { limb_circumference_mm: circumference, cuff_width_mm: width } = given;
  if (circumference === undefined || width === undefined) return undefined;
  return cuffFit(measurement.species, circumference, width, documents.cuff);
}

function heightWork(
  measurement: Measurement,
  given: MeasurementSet,
  mean: Mean | undefined,
  { height: document }: RuleDocuments,
): Pick<JudgedSet, "height" | "corrected"> {
  const aboveHeartMm = given.cuff_above_heart_mm ?? 0;
  const correction = correctionHundredths(measurement.species, aboveHeartMm, document);
  if (mean === undefined || correction === undefined) return {};
  return {
    height: heightOf(measurement.species, aboveHeartMm, mean, document),
    corrected: correctedMean(mean, correction),
  };
}

/** Rules 1 to 6 for one set. */
function workOn(measurement: Measurement, given: MeasurementSet, documents: RuleDocuments): JudgedSet {
  const standings = standingsOf(given.readings, documents.standing);
  const eligible = eligibleOf(given.readings, standings);
  const isIrregular = measurement.rhythm === "irregular";
  const agreement = agreementOf(given.readings, eligible, isIrregular, documents.agreement);
  const averaged = agreement.window ?? eligible;
  const mean = averaged.length === 0 ? undefined : meanOf(averaged.map((reading) => reading.systolic_mmhg));
  return {
    given,
    cuff: cuffOf(measurement, given, documents),
    standings,
    eligible,
    agreement,
    averaged,
    averages: averagesOf(averaged, agreement.window !== undefined, documents.averaging),
    mean,
    bounds: agreement.window ? undefined : boundsOf(given.readings, standings, documents.bounds),
    ...heightWork(measurement, given, mean, documents),
  };
}

function finalStanding(reading: Reading, standing: Standing, { window }: Agreement): FinalStanding {
  if (standing !== "eligible") return standing;
  if (window === undefined) return "provisional";
  return window.includes(reading as NumberedReading) ? "counted" : "earlier";
}

function setAssessment(set: JudgedSet): SetAssessment {
  const { given, standings, agreement, cuff, bounds, height } = set;
  const readings = given.readings.map((reading, index) => ({
    id: reading.id,
    standing: finalStanding(reading, standings[index], agreement),
  }));
  return {
    ...(cuff && { cuff }),
    ...(readings.length > 0 && { readings }),
    verdict: agreement.verdict,
    ...(agreement.readings_needed !== undefined && { readings_needed: agreement.readings_needed }),
    ...(agreement.suspects && { suspects: agreement.suspects }),
    ...set.averages,
    ...(bounds && { bounds }),
    ...(height && { height }),
  };
}

/** One piece of advice for the result set; a window whose category is withheld has none. */
function adviceOf(
  measurement: Measurement,
  set: JudgedSet,
  placing: Placing,
  documents: RuleDocuments,
): Advice | undefined {
  const { given, eligible, agreement, bounds, mean } = set;
  if (agreement.window === undefined) {
    return adviceWithoutWindow(given.readings, eligible, boundsDecide(bounds, documents.bounds), documents.agreement);
  }
  if (!("category" in placing) || mean === undefined) return undefined;
  return adviceWithCategory(mean, eligible, measurement.rest_s, documents.agreement);
}

/** The assessment of one visit's work under one rule set. Pure: same measurement, same rules, same answer. */
export function assess(measurement: Measurement, rules: RuleSet): Assessment {
  const { documents } = rules;
  const sets = measurement.sets.map((given) => workOn(measurement, given, documents));
  const index = resultSet(sets, documents.bounds);
  const result = sets[index];
  const placing = placingOf(measurement, result, documents.category);
  const edges = "category" in placing ? nearEdges(result, documents.category) : [];
  const cautions = cautionsOf(measurement, result, documents.cautions);
  const leaning = leaningOf(cautions);
  const advice = adviceOf(measurement, result, placing, documents);
  return {
    rules: rules.name,
    sets: sets.map(setAssessment),
    result_set: index,
    ...placing,
    ...(edges.length > 0 && { near_edges_mmhg: edges }),
    ...(cautions.length > 0 && { cautions }),
    ...(leaning && { leaning }),
    firmness: firmnessOf(placing, hasHeadline(cautions)),
    ...(advice && { advice }),
  };
}
