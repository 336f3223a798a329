/*
 * The shape of the rule documents the engine is handed; the numbers themselves stand in shared_schemas/rules/v1.
 * It must not import a document: a practice's own figures come in the same way as the shipped ones.
 */
import type { Species } from "./measurement.ts";

/** A list of two: lowest and highest, limits included. */
export type Limits = readonly number[];

export interface PressureLimits {
  readonly systolic: Limits;
  readonly mean: Limits;
  readonly diastolic: Limits;
}

export interface CuffDocument {
  readonly numbers: {
    readonly target_permille: Readonly<Record<Species, number>>;
    readonly good_permille: Readonly<Record<Species, Limits>>;
    readonly usable_permille: Readonly<Record<Species, Limits>>;
    readonly between_sizes_permille: number;
  };
  readonly choices: { readonly of_equal_fit: string };
}

export interface StandingDocument {
  readonly numbers: { readonly possible_mmhg: PressureLimits; readonly first_not_counted: number };
  readonly choices: { readonly order: string };
}

export interface AgreementDocument {
  readonly numbers: {
    readonly window: { readonly least: number; readonly most: number };
    readonly irregular_window: { readonly least: number; readonly most: number };
    readonly even_permille: number;
    readonly fall: { readonly mmhg: number; readonly permille: number };
    readonly suspect: { readonly of_latest: number; readonly mmhg: number; readonly mad_permille: number };
    readonly stop_today_readings: number;
    readonly second_look: { readonly from_mmhg: number; readonly rest_s: number };
  };
  readonly choices: { readonly window: string; readonly centre: string };
}

export interface AveragingDocument {
  readonly numbers: { readonly interval: { readonly from_n: number; readonly t_thousandths: readonly number[] } };
  readonly choices: { readonly spread: string };
}

export interface BoundsDocument {
  readonly numbers: {
    readonly least_readings: number;
    readonly of_latest: number;
    readonly at_least_mmhg: readonly number[];
    readonly below_mmhg: readonly number[];
    readonly decides_from_mmhg: number;
  };
  readonly choices: { readonly above_gauge: string };
}

export interface HeightDocument {
  readonly numbers: {
    readonly level_mm: Readonly<Partial<Record<Species, number>>>;
    readonly hundredths_mmhg_per_mm: Readonly<Partial<Record<Species, number>>>;
  };
  readonly choices: { readonly distance: string };
}

export interface CategoryDocument {
  readonly numbers: {
    readonly from_mmhg: { readonly low: number; readonly moderate: number; readonly high: number };
    readonly low_pressure_mmhg: number;
    readonly adult_months: number;
    readonly near_edge_tenths_mmhg: number;
  };
  readonly choices: { readonly mean: string };
}

export interface CautionsDocument {
  readonly numbers: {
    readonly rest_short_s: Readonly<Record<Species, number>>;
    readonly height_off_mm: number;
    readonly oscillometric_high_mmhg: number;
    readonly oscillometric_small_mm: number;
    readonly many_set_aside_one_in: number;
    readonly one_sided_least: number;
    readonly rising_permille: number;
    readonly pulse_differs: { readonly bpm: number; readonly permille: number };
    readonly gap_short_s: number;
    readonly gap_unknown: { readonly readings: number; readonly within_s: number };
    readonly gauge_step_mmhg: number;
    readonly cuff_share_differs_permille: number;
    readonly likely_mmhg: PressureLimits;
  };
  readonly choices: {
    readonly direction: Readonly<Record<string, string>>;
    readonly weight: Readonly<Record<string, string>>;
  };
}

export interface RuleDocuments {
  readonly cuff: CuffDocument;
  readonly standing: StandingDocument;
  readonly agreement: AgreementDocument;
  readonly averaging: AveragingDocument;
  readonly bounds: BoundsDocument;
  readonly height: HeightDocument;
  readonly category: CategoryDocument;
  readonly cautions: CautionsDocument;
}

/** A named set of rule documents; `name` travels with every assessment. */
export interface RuleSet {
  readonly name: string;
  readonly documents: RuleDocuments;
}
