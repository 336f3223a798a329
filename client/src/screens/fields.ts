/* Text typed into the fields of set-up and cuff: how it is read, where its value goes, and what to say when it cannot be.
   Wrong text stays in its field and its value stays absent; limits are those of the wire document, not of a rule. */
import { parseNumber, type NumberCode } from "../contract/number";
import { tenths } from "../parts/figures";
import { inSetNow, setNow, without, withText, type CuffSet, type Open, type Reading, type Saying } from "./open";
import { done, patched, type Patch, type Plain } from "./undo";

/** Lists of the wire document in the order they are offered. */
export const WIRE_LISTS = {
  set_aside: [
    "moved", "tensed", "purred", "shivered", "panted", "noise_near", "sound_lost", "released_too_fast",
    "pumped_too_little", "cuff_slipped", "device_code", "pulse_differs", "irregular_beat", "other",
  ] as const satisfies readonly NonNullable<Reading["set_aside"]>[],
  site: ["forearm", "above_elbow", "above_hock", "metatarsus", "tail_base"] as const satisfies readonly NonNullable<CuffSet["site"]>[],
  restraint: ["none", "held", "lap", "towel", "basket", "muzzle"] as const satisfies readonly NonNullable<CuffSet["restraint"]>[],
  posture: ["lateral", "sternal", "sitting", "standing", "in_lap"] as const satisfies readonly NonNullable<CuffSet["posture"]>[],
};

export type FieldId = "age" | "rest" | "hours" | "circumference" | "width" | "height";

/** The one field that holds words. */
export type WordsId = "instrument";

/** Longest name of an instrument the wire document takes, in characters. */
const INSTRUMENT_MOST = 60;

type Read = { value: number } | Saying;

interface Reader {
  part: "setup" | "cuff";
  example: string;
  /** Limits in the unit that is kept, and how many of it are one of the unit they are said in. */
  least: number;
  most: number;
  said_in: number;
  /** Units that may be typed, each as so many of the unit that is kept. */
  units: Record<string, number>;
  /** How many of the unit that is kept a number without a unit counts; of the number in tenths. */
  bare: (value_tenths: number, open: Open) => number;
  at: (open: Open) => (string | number)[];
}

/** Without a unit, below this a circumference can only be cm, and from here on only mm: no limb is 39 mm or 40 cm round. */
const CM_BELOW = 40;

const READERS: Record<FieldId, Reader> = {
  age: {
    part: "setup", example: "3", least: 0, most: 600, said_in: 1, units: {},
    bare: (_tenths, open) => (open.texts["age_unit"] === "months" ? 1 : 12),
    at: () => ["measurement", "age_months"],
  },
  rest: {
    part: "setup", example: "10", least: 0, most: 86_400, said_in: 60, units: { min: 60, s: 1 },
    bare: () => 60,
    at: () => ["measurement", "rest_s"],
  },
  hours: {
    part: "setup", example: "2", least: 0, most: 240, said_in: 1, units: { h: 1 },
    bare: () => 1,
    at: () => ["measurement", "calming", "hours"],
  },
  circumference: {
    part: "cuff", example: "13.5", least: 1, most: 1000, said_in: 10, units: { mm: 1, cm: 10 },
    bare: (tenths) => (tenths < CM_BELOW * 10 ? 10 : 1),
    at: (open) => inSetNow(open, "limb_circumference_mm"),
  },
  width: {
    part: "cuff", example: "35", least: 1, most: 500, said_in: 1, units: { mm: 1, cm: 10 },
    bare: () => 1,
    at: (open) => inSetNow(open, "cuff_width_mm"),
  },
  height: {
    part: "cuff", example: "12", least: 0, most: 400, said_in: 10, units: { cm: 10, mm: 1 },
    bare: () => 10,
    at: (open) => inSetNow(open, "cuff_above_heart_mm"),
  },
};

const CODE_WORDS: Partial<Record<NumberCode, string>> = {
  ambiguous: "ask-ambiguous", unknown_unit: "ask-unit", not_whole: "ask-whole", too_large: "ask-range",
};

/** The word that names a field on the screen. */
export function nameOf(field: FieldId): string {
  return {
    age: "field-age", rest: "field-rest", hours: "field-hours", circumference: "field-circumference", width: "field-width-other",
    height: "field-height-other",
  }[field];
}

/** Reads one field's text: its value in the unit that is kept (whole, half up), or the sentence that says what to do. */
export function readField(field: FieldId, text: string, open: Open): Read {
  const reader = READERS[field];
  const bare = parseNumber(text, { decimal: true });
  const read = "code" in bare ? parseNumber(text, { decimal: true, units: reader.units }) : bare;
  const facts = {
    field: nameOf(field), example: reader.example, units: Object.keys(reader.units).join(", "),
    least: tenths((reader.least * 10) / reader.said_in), most: tenths((reader.most * 10) / reader.said_in),
  };
  if ("code" in read) return { word: CODE_WORDS[read.code] ?? "ask-number", facts };
  const factor = "code" in bare ? 1 : reader.bare(read.value_tenths, open);
  const value = Math.floor((read.value_tenths * factor + 5) / 10);
  return value < reader.least || value > reader.most ? { word: "ask-range", facts } : { value };
}

/** A whole number in any digits the parser knows; undefined for anything else. */
export function readWhole(text: string): number | undefined {
  const read = parseNumber(text);
  return "code" in read ? undefined : read.value_tenths / 10;
}

/** The widths of a bag as typed, in whole mm, ascending and once each; what cannot be read is left out. */
export function readBag(text: string): number[] {
  const widths = text.split(/[^\p{Nd}.]+/u).map(readWhole).filter((width) => width !== undefined && width > 0 && width <= 500);
  return [...new Set(widths as number[])].sort((one, other) => one - other);
}

/** The field with new text: the text is kept as typed, the value follows it, and goes where it cannot be read. */
export function withField(open: Open, field: FieldId, text: string): Open {
  const now = withText(open, field, text);
  const read = text.trim() ? readField(field, text, now) : undefined;
  const value = read && "value" in read ? read.value : undefined;
  const signed = field === "height" && value !== undefined && now.texts["height_side"] === "below" ? -value : value;
  const at = READERS[field].at(now);
  return withPlain(now, at, signed);
}

/** A value put at its place, or taken away; not an act of its own. */
export function withPlain(open: Open, at: (string | number)[], to: Plain | undefined): Open {
  return patched(open, to === undefined ? { at } : { at, to })[0];
}

/** Fields of a part whose text cannot be read, each with what to do. Empty fields are no problem: not everything is known. */
export function problemsOf(open: Open, part?: "setup" | "cuff"): { field: FieldId | WordsId; saying: Saying }[] {
  const name = [...(open.texts["instrument"] ?? "").trim()];
  const long = name.length > INSTRUMENT_MOST && part !== "setup";
  const words = { field: "instrument" as const, saying: { word: "ask-instrument-long", facts: { field: "field-instrument", most: INSTRUMENT_MOST } } };
  return [...numberProblemsOf(open, part), ...(long ? [words] : [])];
}

function numberProblemsOf(open: Open, part?: "setup" | "cuff"): { field: FieldId; saying: Saying }[] {
  return (Object.keys(READERS) as FieldId[]).flatMap((field) => {
    const text = open.texts[field];
    if (!text?.trim() || (part && READERS[field].part !== part)) return [];
    const read = readField(field, text, open);
    return "word" in read ? [{ field, saying: read }] : [];
  });
}

/** The part a field stands in. */
export function partOf(field: FieldId | WordsId): "setup" | "cuff" {
  return field === "instrument" ? "cuff" : READERS[field].part;
}

/** The instrument by the words that tell it from others; too long a name is kept as typed and goes nowhere. */
export function withInstrument(open: Open, text: string): Open {
  const name = text.trim();
  const fits = name !== "" && [...name].length <= INSTRUMENT_MOST;
  return withPlain(withText(open, "instrument", text), inSetNow(open, "instrument"), fits ? name : undefined);
}

/** The state, and with another state than calmed by a drug nothing left of the drug; one act. */
export function withState(open: Open, state: NonNullable<Open["measurement"]["state"]>): Open {
  const calmed = state === "calmed";
  const gone: Patch[] = calmed || !open.measurement.calming ? [] : [{ at: ["measurement", "calming"] }, { at: ["texts", "hours"], to: "" }];
  return done(without(open), "act-choice", { field: "field-state" }, [{ at: ["measurement", "state"], to: state }, ...gone]);
}

/** The circumference as read, for the echo beside the field. */
export function circumferenceOf(open: Open): number | undefined {
  return setNow(open).limb_circumference_mm;
}
