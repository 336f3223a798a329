/* The rules' answer to the open measurement, worked out once for each of its states, and what is read from it.
   The rule documents are handed to the engine here; nothing in this file is a rule. */
import { ruleSet } from "../../contract/rule_documents";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { assess } from "../../rules/assess";
import type { Assessment, FinalStanding } from "../../rules/assessment";
import type { Open } from "./open";
import type { Limits } from "./series";

const answers = new WeakMap<Measurement, Assessment>();

/** The rule set this build measures by. */
export const RULES = ruleSet();

/** The assessment of the open measurement as it stands. */
export function judged(open: Open): Assessment {
  const known = answers.get(open.measurement);
  if (known) return known;
  const answer = assess(open.measurement, RULES);
  answers.set(open.measurement, answer);
  return answer;
}

/** What an added reading is held against. */
export function limits(): Limits {
  const { standing, cautions } = RULES.documents;
  return {
    possible: { ...standing.numbers.possible_mmhg },
    likely: { ...cautions.numbers.likely_mmhg },
  };
}

/** What one reading counts for; undefined when the assessment does not know it. */
export function standingOf(assessment: Assessment, set: number, id: string): FinalStanding | undefined {
  return assessment.sets[set]?.readings?.find((reading) => reading.id === id)?.standing;
}

/** Whether it is drawn filled: it counts, or may count once there are enough. */
export function mayCount(standing: FinalStanding | undefined): boolean {
  return standing === "counted" || standing === "provisional";
}
