/* The figures of each rule document as the sentence `worked-<rule>` needs them. Reads the documents; carries no number of its own. */
import { hundredths, permille, tenths } from "../../parts/figures";
import { RULES } from "./judged";

export type RuleName = "cuff" | "standing" | "agreement" | "averaging" | "bounds" | "height" | "category" | "cautions";
type Species = "dog" | "cat";
type Figures = Record<string, string>;

const { cuff, standing, agreement, averaging, bounds, height, category } = RULES.documents;

function pair([low, high]: readonly number[], name: string, format: (value: number) => string = String): Figures {
  return { [`${name}_low`]: format(low ?? 0), [`${name}_high`]: format(high ?? 0) };
}

const FIGURES: Record<RuleName, (species: Species) => Figures> = {
  cuff: (species) => ({
    target: permille(cuff.numbers.target_permille[species]),
    between: permille(cuff.numbers.between_sizes_permille),
    ...pair(cuff.numbers.good_permille[species], "good", permille),
    ...pair(cuff.numbers.usable_permille[species], "usable", permille),
  }),
  standing: () => ({
    ...pair(standing.numbers.possible_mmhg.systolic, "sys"),
    ...pair(standing.numbers.possible_mmhg.mean, "mean"),
    ...pair(standing.numbers.possible_mmhg.diastolic, "dia"),
  }),
  agreement: () => ({
    least: String(agreement.numbers.window.least), most: String(agreement.numbers.window.most),
    irregular_least: String(agreement.numbers.irregular_window.least), irregular_most: String(agreement.numbers.irregular_window.most),
    even: permille(agreement.numbers.even_permille),
    fall_mmhg: String(agreement.numbers.fall.mmhg), fall: permille(agreement.numbers.fall.permille),
  }),
  averaging: () => ({ from_n: String(averaging.numbers.interval.from_n) }),
  bounds: () => ({
    least: String(bounds.numbers.least_readings), latest: String(bounds.numbers.of_latest),
    at_least: bounds.numbers.at_least_mmhg.join(", "), below: bounds.numbers.below_mmhg.join(", "),
    decides: String(bounds.numbers.decides_from_mmhg),
  }),
  height: () => ({
    level_cm: tenths(height.numbers.level_mm.dog),
    per_cm: hundredths(height.numbers.hundredths_mmhg_per_mm.dog * 10),
  }),
  category: () => ({
    low: String(category.numbers.from_mmhg.low), moderate: String(category.numbers.from_mmhg.moderate), high: String(category.numbers.from_mmhg.high),
    low_pressure: String(category.numbers.low_pressure_mmhg), months: String(category.numbers.adult_months),
    near: tenths(category.numbers.near_edge_tenths_mmhg),
  }),
  cautions: () => ({}),
};

/** Facts for the sentence of one rule; species where the rule differs by it. */
export function ruleFigures(name: RuleName, species: Species): Figures {
  return FIGURES[name](species);
}
