/*
 * The shipped rule documents as one named set, read at build time from shared_schemas/rules/v1.
 * It must not change a number: the engine and the screens get them as they stand.
 */
import agreement from "../../../shared_schemas/rules/v1/agreement.json";
import averaging from "../../../shared_schemas/rules/v1/averaging.json";
import bounds from "../../../shared_schemas/rules/v1/bounds.json";
import category from "../../../shared_schemas/rules/v1/category.json";
import cautions from "../../../shared_schemas/rules/v1/cautions.json";
import cuff from "../../../shared_schemas/rules/v1/cuff.json";
import height from "../../../shared_schemas/rules/v1/height.json";
import standing from "../../../shared_schemas/rules/v1/standing.json";

/** Readable by anyone who names no rule: screens show sources from here. */
const V1 = {
  name: "v1",
  documents: { agreement, averaging, bounds, category, cautions, cuff, height, standing },
};

export type ShippedRuleSet = typeof V1;

/** The rule set of that name; an unknown name raises, since nothing may be assessed under a guess. */
export function ruleSet(name = "v1"): ShippedRuleSet {
  if (name !== V1.name) throw new Error(`unknown rule set: ${name}`);
  return V1;
}
