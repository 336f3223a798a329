/* Text typed into the fields of set-up and cuff: how it is read, where its value goes, and what to say when it cannot be.
   Wrong text stays in its field and its value stays absent; limits are those of the wire document, not of a rule. */
import { parseNumber, type NumberCode } from "../../contract/number";
import { tenths } from "../../parts/figures";
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

/** Fields that hold words, or several numbers. */
export type WordsId = "instrument" | "bag";

/** Longest name of an instrument the wire document takes, in characters. */
const INSTRUMENT_MOST = 60;

type Read = { value: number } | Saying;

interface Reader {
  part: "calm" | "cuff";
  example: string;
  /** Limits in the unit that is kept, and how many of it are one of the unit they are said in. */
  least: number;
  most: number;
  said_in: (open: Open) => number;
  /** Whether a tenth is expected. */
  decimal: boolean;
  /** Units that may be typed, each as so many of the unit that is kept. */
  units: Record<string, number>;
  /** How many of the unit that is kept a number without a unit counts; of the number in tenths. */
  bare: (value_tenths: number, open: Open) => number;
  at: (open: Open) => (string | number)[];
}

/** A circumference from before its unit was asked (a draft of an earlier build): below this it was cm, from here on mm. */
const CM_BELOW = 40;

const inMonths = (open: Open): number => (open.texts["age_unit"] === "months" ? 1 : 12);

const READERS: Record<FieldId, Reader> = {
  age: {
    part: "calm", example: "3", least: 0, most: 600, said_in: inMonths, decimal: true,
    units: { years: 12, year: 12, y: 12, months: 1, month: 1 },
    bare: (_tenths, open) => inMonths(open),
    at: () => ["measurement", "age_months"],
  },
  rest: {
    part: "calm", example: "10", least: 0, most: 86_400, said_in: () => 60, decimal: true, units: { min: 60, s: 1 },
    bare: () => 60,
    at: () => ["measurement", "rest_s"],
  },
  hours: {
    part: "calm", example: "2", least: 0, most: 240, said_in: () => 1, decimal: false, units: { h: 1 },
    bare: () => 1,
    at: () => ["measurement", "calming", "hours"],
  },
  circumference: {
    part: "cuff", example: "13.5", least: 1, most: 1000, said_in: () => 10, decimal: true, units: { mm: 1, cm: 10 },
    bare: (tenths, { texts: { circumference_unit: unit } }) => (unit ? (unit === "mm" ? 1 : 10) : tenths < CM_BELOW * 10 ? 10 : 1),
    at: (open) => inSetNow(open, "limb_circumference_mm"),
  },
  width: {
    part: "cuff", example: "35", least: 1, most: 500, said_in: () => 1, decimal: false, units: { mm: 1, cm: 10 },
    bare: () => 1,
    at: (open) => inSetNow(open, "cuff_width_mm"),
  },
  height: {
    part: "cuff", example: "12", least: 0, most: 400, said_in: () => 10, decimal: true, units: { cm: 10, mm: 1 },
    bare: () => 10,
    at: (open) => inSetNow(open, "cuff_above_heart_mm"),
  },
};

/** A separator and just three digits: thousands, or a decimal finer than anybody reads off a tape. Not for us to decide. */
const GROUPED = /[.,\u066b]\p{Nd}{3}(?!\p{Nd})/u;

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
  const { decimal, units } = reader;
  const bare = parseNumber(text, { decimal });
  const read = "code" in bare ? parseNumber(text, { decimal, units }) : bare;
  const facts = {
    field: nameOf(field), example: reader.example, units: Object.keys(units).join(" / "),
    least: tenths((reader.least * 10) / reader.said_in(open)), most: tenths((reader.most * 10) / reader.said_in(open)),
  };
  if (GROUPED.test(text)) return { word: "ask-ambiguous", facts };
  if ("code" in read) return { word: CODE_WORDS[read.code] ?? "ask-number", facts };
  const factor = "code" in bare ? 1 : reader.bare(read.value_tenths, open);
  const value = Math.floor((read.value_tenths * factor + 5) / 10);
  return value < reader.least || value > reader.most ? { word: "ask-range", facts } : { value };
}

/** A whole number in any digits the parser knows, its unit typed along or not; undefined for anything else. */
export function readWhole(text: string, units: Record<string, number>): number | undefined {
  const read = parseNumber(text, { units });
  return "code" in read ? undefined : read.value_tenths / 10;
}

const BAG_UNITS = READERS.width.units;
const BETWEEN_WIDTHS = /[;,\n]\s*|\s+(?=\p{Nd})/u;

/** The widths of a bag as typed, in whole mm, ascending and once each, and the first piece that is none. */
export function readBag(text: string): { widths: number[]; unread?: string } {
  const pieces = text.split(BETWEEN_WIDTHS).map((piece) => piece.trim()).filter(Boolean);
  const isWidth = (mm: number | undefined): mm is number => mm !== undefined && mm >= READERS.width.least && mm <= READERS.width.most;
  const read = pieces.map((piece) => readWhole(piece, BAG_UNITS));
  const unread = pieces[read.findIndex((mm) => !isWidth(mm))];
  const widths = [...new Set(read.filter(isWidth))].sort((one, other) => one - other);
  return unread === undefined ? { widths } : { widths, unread };
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
export function problemsOf(open: Open, part?: "calm" | "cuff"): { field: FieldId | WordsId; saying: Saying }[] {
  return [...numberProblemsOf(open, part), ...(part === "calm" ? [] : wordsProblemsOf(open))];
}

function wordsProblemsOf(open: Open): { field: WordsId; saying: Saying }[] {
  const name = [...(open.texts["instrument"] ?? "").trim()];
  const { unread } = readBag(open.texts["bag"] ?? "");
  const long = { field: "instrument" as const, saying: { word: "ask-instrument-long", facts: { field: "field-instrument", most: INSTRUMENT_MOST } } };
  const wrong = { field: "bag" as const, saying: { word: "ask-bag", facts: { field: "field-bag", piece: unread ?? "" } } };
  return [...(unread === undefined ? [] : [wrong]), ...(name.length > INSTRUMENT_MOST ? [long] : [])];
}

function numberProblemsOf(open: Open, part?: "calm" | "cuff"): { field: FieldId; saying: Saying }[] {
  return (Object.keys(READERS) as FieldId[]).flatMap((field) => {
    const text = open.texts[field];
    if (!text?.trim() || (part && READERS[field].part !== part)) return [];
    const read = readField(field, text, open);
    return "word" in read ? [{ field, saying: read }] : [];
  });
}

/** The part a field stands in. */
export function partOf(field: FieldId | WordsId): "calm" | "cuff" {
  return field === "instrument" || field === "bag" ? "cuff" : READERS[field].part;
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

const ECHO_UNITS: Record<FieldId, string> = {
  age: "months", rest: "minutes", hours: "hours", circumference: "mm", width: "mm", height: "mm",
};

/** What was understood of a field, for the echo beside it; undefined where nothing was. */
export function echoOf(field: FieldId, open: Open): Saying | undefined {
  const text = open.texts[field];
  const read = text?.trim() ? readField(field, text, open) : undefined;
  if (!read || !("value" in read)) return undefined;
  const n = field === "rest" ? tenths((read.value * 10) / 60) : String(read.value);
  return { word: `echo-${ECHO_UNITS[field]}`, facts: { n } };
}
