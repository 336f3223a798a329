/*
 * Rule 7: which set is the result, and the category of risk of organ damage it falls in, or why none is given.
 * It must not place a corrected or rounded mean, and never speaks of more than this one visit.
 */
import type { BoundsDocument, CategoryDocument } from "./documents.ts";
import type { Measurement } from "./measurement.ts";
import type { JudgedSet } from "./judged_set.ts";
import { boundsDecide } from "./bounds.ts";
import { chosen } from "./choices.ts";
import type { CuffFit } from "./cuff.ts";
import type { Mean } from "./whole_numbers.ts";

export type Category = "minimal" | "low" | "moderate" | "high";
export type Firmness = "firm" | "with_care" | "not_placed";

export type Placing = { readonly category: Category } | { readonly category_withheld: string };

const MEANS = { raw: (set: JudgedSet): Mean => set.mean as Mean };
const BANDS_HIGHEST_FIRST = ["high", "moderate", "low"] as const;

/** The latest set with a window, or with bounds that decide; without any, the latest set. */
export function resultSet(sets: readonly JudgedSet[], document: BoundsDocument): number {
  const found = sets.findLastIndex(
    (set) => set.agreement.window !== undefined || boundsDecide(set.bounds, document),
  );
  return found === -1 ? sets.length - 1 : found;
}

/** Is the exact mean below a whole number of mmHg? */
function isBelow(mean: Mean, mmhg: number): boolean {
  return mean.sum < mmhg * mean.n;
}

function bandOf(mean: Mean, document: CategoryDocument): Category {
  const band = BANDS_HIGHEST_FIRST.find((name) => !isBelow(mean, document.numbers.from_mmhg[name]));
  return band ?? "minimal";
}

/** A poor fit withholds, unless its error points away from the finding. */
function cuffWithholds(cuff: CuffFit | undefined, category: Category): boolean {
  if (cuff?.fit !== "poor") return false;
  const pointsAway =
    (cuff.expect === "reads_high" && category === "minimal") ||
    (cuff.expect === "reads_low" && category === "high");
  return !pointsAway;
}

/** The height correction moves the mean to another band, or below the low limit. */
function heightWithholds(corrected: Mean | undefined, category: Category, document: CategoryDocument): boolean {
  if (corrected === undefined) return false;
  return isBelow(corrected, document.numbers.low_pressure_mmhg) || bandOf(corrected, document) !== category;
}

/** The category of the result set, or the first reason that withholds it. */
export function placingOf(measurement: Measurement, set: JudgedSet, document: CategoryDocument): Placing {
  const { state, age_months: age } = measurement;
  if (state === "sedated") return { category_withheld: "sedated" };
  if (age !== undefined && age < document.numbers.adult_months) return { category_withheld: "not_adult" };
  if (set.agreement.verdict !== "steady") return { category_withheld: set.agreement.verdict };
  const mean = chosen(MEANS, document.choices.mean)(set);
  if (isBelow(mean, document.numbers.low_pressure_mmhg)) return { category_withheld: "low_pressure" };
  const category = bandOf(mean, document);
  if (heightWithholds(set.corrected, category, document)) return { category_withheld: "height" };
  if (cuffWithholds(set.cuff, category)) return { category_withheld: "cuff" };
  return { category };
}

/** Edges the mean could lie on the other side of, lowest first: mean − m < edge ≤ mean + m, in rounded tenths. */
export function nearEdges(set: JudgedSet, document: CategoryDocument): readonly number[] {
  const { mean_tenths_mmhg: mean = 0, ci95_half_width_tenths_mmhg: halfWidth = 0 } = set.averages.systolic ?? {};
  const margin = Math.max(halfWidth, document.numbers.near_edge_tenths_mmhg);
  const { low, moderate, high } = document.numbers.from_mmhg;
  return [low, moderate, high].filter((edge) => mean - margin < edge * 10 && edge * 10 <= mean + margin);
}

/** How firmly the category stands. */
export function firmnessOf(placing: Placing, hasHeadlineCaution: boolean): Firmness {
  if ("category_withheld" in placing) return "not_placed";
  return hasHeadlineCaution ? "with_care" : "firm";
}
