/*
 * What number did a person type? Digits of five scripts, three decimal signs, a unit typed along with it.
 * It must not guess: what could be read in two ways is refused with a code. Twin of quietcuff/contract/number.py;
 * both run tests/vectors/number.json.
 */

export type NumberCode =
  | "empty"
  | "not_a_number"
  | "ambiguous"
  | "not_whole"
  | "too_fine"
  | "too_large"
  | "unknown_unit";

/** Tenths of the field's unit, or why there is no number. */
export type ParsedNumber = { readonly value_tenths: number } | { readonly code: NumberCode };

export interface NumberField {
  /** Units that may be typed, each as so many of the field's unit: for a field in mm `{ mm: 1, cm: 10 }`. */
  readonly units?: Readonly<Record<string, number>>;
  /** May the value have a tenth of the field's unit? Absent: no decimal is expected. */
  readonly decimal?: boolean;
}

/** Zero of each script: ASCII, Arabic-Indic, Eastern Arabic-Indic, Devanagari, full width. */
const ZEROS = [0x30, 0x660, 0x6f0, 0x966, 0xff10];

/** Listed, not left to `trim`: the two languages disagree on white space. The last three are direction marks. */
const BLANK = "[ \\t\\r\\n\\u00a0\\u2009\\u202f\\u3000\\u200e\\u200f\\u061c]*";
const FORM = new RegExp(`^${BLANK}([0-9]+)(?:[.,\\u066b]([0-9]+))?${BLANK}(.*?)${BLANK}$`, "s");
const ALL_BLANK = new RegExp(`^${BLANK}$`);
const LOOKS_LIKE_A_UNIT = /^[A-Za-z\u00b5\u03bc\u00b0%/"'\u2032\u2033]+$/;
const MOST_WHOLE_DIGITS = 6;
const MOST_DECIMAL_DIGITS = 6;
const GROUP_DIGITS = 3;

/** The text with its digits in ASCII; undefined when digits of two scripts are mixed. */
function withAsciiDigits(text: string): string | undefined {
  let script: number | undefined;
  let plain = "";
  for (const sign of text) {
    const code = sign.codePointAt(0) as number;
    const zero = ZEROS.find((first) => first <= code && code <= first + 9);
    if (zero === undefined) {
      plain += sign;
      continue;
    }
    if (script !== undefined && script !== zero) return undefined;
    script = zero;
    plain += String(code - zero);
  }
  return plain;
}

/** How many of the field's unit one of the typed unit is; nothing typed: 1. Upper and lower case are the same. */
function factorOf(typed: string, units: Readonly<Record<string, number>>): number | undefined {
  if (typed === "") return 1;
  const lower = (text: string): string => text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
  const name = Object.keys(units).find((unit) => lower(unit) === lower(typed));
  return name === undefined ? undefined : units[name];
}

/** The digits as tenths of the field's unit, exactly; digits and factor are few enough to stay below 2^53. */
function tenthsOf(whole: string, fraction: string, factor: number, decimal: boolean): ParsedNumber {
  if (whole.length > MOST_WHOLE_DIGITS) return { code: "too_large" };
  if (fraction.length > MOST_DECIMAL_DIGITS) return { code: "too_fine" };
  let scale = 1;
  for (const _ of fraction) scale *= 10;
  const scaledTenths = (Number(whole) * scale + Number(fraction)) * factor * 10;
  if (scaledTenths % scale !== 0) return { code: decimal ? "too_fine" : "not_whole" };
  const tenths = scaledTenths / scale;
  return decimal || tenths % 10 === 0 ? { value_tenths: tenths } : { code: "not_whole" };
}

/**
 * The number in `text` as whole tenths of the field's unit, or a code. Signs, exponents, hex, NaN and Infinity are
 * no numbers; a separator followed by exactly three digits is `ambiguous` where no decimal is expected, since it may
 * be meant to group thousands.
 */
export function parseNumber(text: string, field: NumberField = {}): ParsedNumber {
  if (ALL_BLANK.test(text)) return { code: "empty" };
  const form = FORM.exec(withAsciiDigits(text) ?? "");
  if (!form) return { code: "not_a_number" };
  const [, digits, fraction = "", typed] = form;
  const factor = factorOf(typed, field.units ?? {});
  if (factor === undefined) return { code: LOOKS_LIKE_A_UNIT.test(typed) ? "unknown_unit" : "not_a_number" };
  if (!field.decimal && fraction.length === GROUP_DIGITS) return { code: "ambiguous" };
  return tenthsOf(digits.replace(/^0+(?=.)/, ""), fraction.replace(/0+$/, ""), factor, field.decimal ?? false);
}
