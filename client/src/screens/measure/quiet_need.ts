/* How long an animal should be left in peace before the first reading: read from the rule document `cautions`, which says when a
   rest was short. Must not carry a figure of its own. */
import type { Patient1 as Patient } from "../../contract/wire_types";
import { RULES } from "./judged";

/** The need of this kind of animal, in seconds. */
export function quietNeed_s(species: Patient["species"]): number {
  return RULES.documents.cautions.numbers.rest_short_s[species];
}
