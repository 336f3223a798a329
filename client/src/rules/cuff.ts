/*
 * Rule 1: does the cuff fit the limb, and which width of a bag fits best?
 * It never corrects a pressure by number: it says which way a wrong width bends the reading.
 */
import type { CuffDocument, Limits } from "./documents.ts";
import type { Species } from "./measurement.ts";
import { chosen } from "./choices.ts";
import { halfUp } from "./whole_numbers.ts";

export type Fit = "good" | "usable" | "poor";
export type Expect = "reads_high" | "reads_low";

export interface CuffFit {
  readonly target_tenths_mm: number;
  readonly share_permille: number;
  readonly fit: Fit;
  /** Which way the reading errs; absent inside the good range. */
  readonly expect?: Expect;
}

export type CuffChoice =
  | (CuffFit & { readonly choice_mm: number })
  | { readonly target_tenths_mm: number; readonly no_fit: true };

const FITS_BEST_FIRST: readonly Fit[] = ["good", "usable", "poor"];

/** Which of two widths of equal fit; all values in thousandths of a mm except the share of the gap. */
const OF_EQUAL_FIT = {
  larger_unless_near_smaller: (target: number, smaller: number, larger: number, share: number): boolean =>
    (target - smaller) * 1000 >= share * (larger - smaller),
};

/** Width : circumference against a range in permille, on the exact share, limits included. */
function isShareWithin(widthMm: number, circumferenceMm: number, [lowest, highest]: Limits): boolean {
  const share = widthMm * 1000;
  return lowest * circumferenceMm <= share && share <= highest * circumferenceMm;
}

function fitOf(species: Species, circumferenceMm: number, widthMm: number, document: CuffDocument): Fit {
  if (isShareWithin(widthMm, circumferenceMm, document.numbers.good_permille[species])) return "good";
  if (isShareWithin(widthMm, circumferenceMm, document.numbers.usable_permille[species])) return "usable";
  return "poor";
}

function targetTenthsMm(species: Species, circumferenceMm: number, document: CuffDocument): number {
  return halfUp(circumferenceMm * document.numbers.target_permille[species] * 10, 1000);
}

/** How a cuff of `widthMm` fits a limb of `circumferenceMm` (both at least 1 mm). */
export function cuffFit(
  species: Species,
  circumferenceMm: number,
  widthMm: number,
  document: CuffDocument,
): CuffFit {
  const [lowest, highest] = document.numbers.good_permille[species];
  const found = {
    target_tenths_mm: targetTenthsMm(species, circumferenceMm, document),
    share_permille: halfUp(widthMm * 1000, circumferenceMm),
    fit: fitOf(species, circumferenceMm, widthMm, document),
  };
  if (widthMm * 1000 < lowest * circumferenceMm) return { ...found, expect: "reads_high" };
  if (widthMm * 1000 > highest * circumferenceMm) return { ...found, expect: "reads_low" };
  return found;
}

/** The nearest width at or below the target and the nearest above it; one of them may be missing. */
function candidatesOf(targetThousandthsMm: number, bagMm: readonly number[]): { smaller?: number; larger?: number } {
  let smaller: number | undefined;
  let larger: number | undefined;
  for (const width of bagMm) {
    if (width * 1000 <= targetThousandthsMm) smaller = smaller === undefined ? width : Math.max(smaller, width);
    else larger = larger === undefined ? width : Math.min(larger, width);
  }
  return { smaller, larger };
}

/**
 * The width of the bag that fits the limb best, or `no_fit` when the best of them is poor.
 * An empty bag raises: there is nothing to choose from.
 */
export function chooseCuff(
  species: Species,
  limbCircumferenceMm: number,
  bagMm: readonly number[],
  document: CuffDocument,
): CuffChoice {
  if (bagMm.length === 0) throw new Error("an empty bag");
  const target = limbCircumferenceMm * document.numbers.target_permille[species];
  const { smaller, larger } = candidatesOf(target, bagMm);
  const width = betterOf(smaller, larger, (one, other) => {
    const rank = (candidate: number): number =>
      FITS_BEST_FIRST.indexOf(fitOf(species, limbCircumferenceMm, candidate, document));
    if (rank(one) !== rank(other)) return rank(other) < rank(one);
    const takesLarger = chosen(OF_EQUAL_FIT, document.choices.of_equal_fit);
    return takesLarger(target, one * 1000, other * 1000, document.numbers.between_sizes_permille);
  });
  const fit = cuffFit(species, limbCircumferenceMm, width, document);
  if (fit.fit === "poor") return { target_tenths_mm: fit.target_tenths_mm, no_fit: true };
  return { ...fit, choice_mm: width };
}

/** The only candidate there is, or of two the one `takesLarger` decides for. */
function betterOf(
  smaller: number | undefined,
  larger: number | undefined,
  takesLarger: (smaller: number, larger: number) => boolean,
): number {
  if (smaller === undefined) return larger as number;
  if (larger === undefined) return smaller;
  return takesLarger(smaller, larger) ? larger : smaller;
}
