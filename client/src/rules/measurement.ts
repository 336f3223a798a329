/*
 * The shape of what the rules are given: one visit's work on one animal, already checked against the wire schema.
 * It holds no logic. It is written here and not imported, since rules and contract do not know each other;
 * the generated wire type fits it.
 */

export type Species = "dog" | "cat";
export type Beyond = "above_gauge" | "no_sound" | "no_value";
export type Method = "doppler" | "oscillometric";

export interface Reading {
  readonly id: string;
  readonly taken_s?: number;
  readonly systolic_mmhg?: number;
  readonly mean_mmhg?: number;
  readonly diastolic_mmhg?: number;
  readonly pulse_bpm?: number;
  readonly palpated_bpm?: number;
  readonly beyond?: Beyond;
  readonly set_aside?: string;
}

export interface MeasurementSet {
  readonly method: Method;
  readonly gauge?: "aneroid" | "digital";
  readonly site?: string;
  readonly posture?: string;
  readonly instrument?: string;
  readonly limb_circumference_mm?: number;
  readonly cuff_width_mm?: number;
  readonly cuff_above_heart_mm?: number;
  readonly readings: readonly Reading[];
}

export interface Previous {
  readonly method?: string;
  readonly site?: string;
  readonly posture?: string;
  readonly place?: string;
  readonly instrument?: string;
  readonly cuff_share_permille?: number;
}

export interface Measurement {
  readonly species: Species;
  readonly age_months?: number;
  readonly state?: "awake" | "calmed" | "sedated";
  readonly rhythm?: "regular" | "irregular";
  readonly demeanour?: "sleepy" | "calm" | "tense" | "fighting";
  readonly rest_s?: number;
  readonly place?: string;
  readonly previous?: Previous;
  readonly sets: readonly MeasurementSet[];
}
