/*
 * The shape of what the rules answer; what does not apply is absent. Units are in the names.
 * It holds no logic and no sentence: codes and facts only.
 */
import type { Bounds } from "./bounds.ts";
import type { Average, PulseAverage } from "./averaging.ts";
import type { Advice, Verdict } from "./agreement.ts";
import type { Category, Firmness } from "./category.ts";
import type { Caution, Direction } from "./cautions.ts";
import type { CuffFit } from "./cuff.ts";
import type { HeightCorrection } from "./height.ts";

/** What a reading counts for in the end. */
export type FinalStanding =
  | "by_hand"
  | "no_number"
  | "impossible"
  | "first"
  | "counted"
  | "earlier"
  | "provisional";

export interface AssessedReading {
  readonly id: string;
  readonly standing: FinalStanding;
}

export interface SetAssessment {
  readonly cuff?: CuffFit;
  readonly readings?: readonly AssessedReading[];
  readonly verdict: Verdict;
  readonly readings_needed?: number;
  readonly suspects?: readonly string[];
  readonly systolic?: Average;
  readonly mean?: Average;
  readonly diastolic?: Average;
  readonly pulse?: PulseAverage;
  readonly bounds?: Bounds;
  readonly height?: HeightCorrection;
}

export interface Assessment {
  readonly rules: string;
  readonly sets: readonly SetAssessment[];
  readonly result_set: number;
  readonly category?: Category;
  readonly category_withheld?: string;
  readonly near_edges_mmhg?: readonly number[];
  readonly cautions?: readonly Caution[];
  readonly leaning?: Direction;
  readonly firmness: Firmness;
  readonly advice?: Advice;
}
