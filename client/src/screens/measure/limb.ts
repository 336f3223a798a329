/* The limb circumference as typed: its unit is chosen beside the number or typed with it, cm unless said otherwise.
   What is unlikely for the species becomes a question with the other unit as its answer. Pure; blocks nothing. */
import { parseNumber } from "../../contract/number";
import { tenths } from "../../parts/figures";
import { withField } from "./fields";
import { LIMB_LIKELY_MM } from "./limb_ranges";
import { limbIsToday } from "./limb_from";
import { setNow, without, type Open } from "./open";

export type LimbUnit = "cm" | "mm";

const UNIT_MM: Record<LimbUnit, number> = { cm: 10, mm: 1 };
const TYPED_UNIT = /\s*(mm|cm)\s*$/i;

function typedUnit(text: string): LimbUnit | undefined {
  return TYPED_UNIT.exec(text)?.[1]?.toLowerCase() as LimbUnit | undefined;
}

/** The unit that is chosen now. A draft of an earlier build has none: there the size of the number said it. */
export function unitOf(open: Open): LimbUnit {
  const text = open.texts["circumference"] ?? "";
  const chosen = typedUnit(text) ?? (open.texts["circumference_unit"] as LimbUnit | undefined);
  if (chosen || !text.trim()) return chosen ?? "cm";
  const mm = setNow(open).limb_circumference_mm;
  const bare = parseNumber(text, { decimal: true });
  return mm !== undefined && !("code" in bare) && bare.value_tenths === mm * 10 ? "mm" : "cm";
}

/** New text: a unit typed along is taken as chosen, else the chosen one stays. */
export function withLimb(open: Open, text: string): Open {
  const unit = typedUnit(text) ?? unitOf(open);
  return withField(limbIsToday({ ...open, texts: { ...open.texts, circumference_unit: unit } }), "circumference", text);
}

/** The number as it is, in the other unit. */
export function withUnit(open: Open, unit: LimbUnit): Open {
  const bare = (open.texts["circumference"] ?? "").replace(TYPED_UNIT, "");
  return withField({ ...without(open), texts: { ...open.texts, circumference_unit: unit } }, "circumference", bare);
}

export interface LimbQuestion {
  word: "limb-large" | "limb-small";
  /** What was typed, with its unit. */
  typed: string;
  /** The same number in the other unit, where that is likely: said both ways. */
  meant?: { unit: LimbUnit; cm: string; mm: string };
}

/** What is unlikely about the circumference typed; undefined when nothing is, or a person said it is right. */
export function limbQuestion(open: Open): LimbQuestion | undefined {
  const text = (open.texts["circumference"] ?? "").trim();
  const bare = parseNumber(text.replace(TYPED_UNIT, ""), { decimal: true });
  if (!text || "code" in bare || open.texts["circumference_sure"] === text) return undefined;
  const { least, most } = LIMB_LIKELY_MM[open.measurement.species];
  const unit = unitOf(open);
  const inTenths = (as: LimbUnit): number => bare.value_tenths * UNIT_MM[as];
  const isLikely = (as: LimbUnit): boolean => inTenths(as) >= least * 10 && inTenths(as) <= most * 10;
  if (isLikely(unit)) return undefined;
  const other = unit === "cm" ? "mm" : "cm";
  const word = inTenths(unit) > most * 10 ? "limb-large" : "limb-small";
  const typed = `${tenths(bare.value_tenths)} ${unit}`;
  if (!isLikely(other)) return { word, typed };
  return { word, typed, meant: { unit: other, cm: tenths(inTenths(other) / 10), mm: tenths(inTenths(other)) } };
}

/** *It is right*: this text is not asked about again. */
export function limbIsRight(open: Open): Open {
  return { ...open, texts: { ...open.texts, circumference_sure: (open.texts["circumference"] ?? "").trim() } };
}
