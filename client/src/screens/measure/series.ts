/* What is done to the series of readings: add, an attempt without a number, set aside, put back, new set,
   a tapped pulse, a second look, finish.
   Pure: the open measurement in, the open measurement out. Limits come from the rule documents handed in; nothing is
   ever refused for being unlikely, and nothing here decides what a reading counts for. */
import { clockSeen } from "../../parts/now";
import { readWhole } from "./fields";
import { inSetNow, setNow, toPart, without, type Numbers, type Open, type Reading, type Saying, type WhyStopped } from "./open";
import { EMPTY_PAD, fieldsOf, isEmpty, type PadField } from "./pad";
import { afterAll } from "./outcome";
import { quietFrom, restPatches } from "./quiet";
import type { Pulse } from "./pulse_tap";
import { done } from "./undo";

/** A second Add within this time is a ghost of the first. */
export const SECOND_TAP_MS = 400;
const READINGS_MOST = 40;
const SETS_MOST = 6;
const TAKEN_S_MOST = 604_800;

export const NUMBER_KEYS: Record<PadField, keyof Numbers> = {
  systolic: "systolic_mmhg", mean: "mean_mmhg", diastolic: "diastolic_mmhg", pulse: "pulse_bpm",
};

const PRESSURE_UNITS = { mmHg: 1 };
const PULSE_UNITS = { "/min": 1, bpm: 1 };

/** The limits an added reading is held against, from the documents `standing` and `cautions`. */
export interface Limits {
  possible: Record<string, readonly number[]>;
  likely: Record<string, readonly number[]>;
}

type Asked = { numbers: Numbers } | { field: PadField; word: string; facts: Record<string, string> };

/** The numbers of the half-typed reading, or the first field that cannot be a number. */
export function numbersOf(open: Open): Asked {
  const numbers: { -readonly [Key in keyof Numbers]: Numbers[Key] } = {};
  for (const field of fieldsOf(setNow(open).method)) {
    const text = (open.pad.texts[field] ?? "").trim();
    if (!text) continue;
    const whole = readWhole(text, field === "pulse" ? PULSE_UNITS : PRESSURE_UNITS);
    if (whole === undefined || whole > 999) return { field, word: "ask-whole", facts: { example: "142" } };
    numbers[NUMBER_KEYS[field]] = whole;
  }
  if (numbers.systolic_mmhg === undefined) return { field: "systolic", word: "ask-systolic", facts: {} };
  return { numbers };
}

/** What is unusual or impossible about these numbers, one question each. */
export function questionsOf(numbers: Numbers, limits: Limits): Saying[] {
  const questions: Saying[] = [];
  for (const field of ["systolic", "mean", "diastolic"] as const) {
    const value = numbers[NUMBER_KEYS[field]];
    if (value === undefined) continue;
    for (const [word, range] of [["impossible-outside", limits.possible[field]], ["unlikely-outside", limits.likely[field]]] as const) {
      const [least, most] = range ?? [];
      if (least === undefined || most === undefined || (value >= least && value <= most)) continue;
      questions.push({ word, facts: { field, value: String(value), least: String(least), most: String(most) } });
      break;
    }
  }
  const present = (["systolic", "mean", "diastolic"] as const).flatMap((field) => {
    const value = numbers[NUMBER_KEYS[field]];
    return value === undefined ? [] : [[field, value] as const];
  });
  if (present.some(([, value], at) => at > 0 && value >= (present[at - 1]?.[1] ?? Infinity))) {
    questions.push({ word: "impossible-order", facts: Object.fromEntries(present) });
  }
  return questions;
}

/** Names numbers in few characters: 142, or 142/104/85. */
export function shortOf(reading: Reading | Numbers): string {
  return [reading.systolic_mmhg, reading.mean_mmhg, reading.diastolic_mmhg].filter((n) => n !== undefined).join("/");
}

function same(a: Numbers, b: Numbers): boolean {
  return Object.values(NUMBER_KEYS).every((key) => a[key] === b[key]);
}

/** Puts a reading at the end of the set now. A full set says so and takes nothing. */
function appended(open: Open, reading: Reading, at_ms: number, value: string): Open {
  const { sheet: _sheet, ...clear } = without(open);
  const count = setNow(open).readings.length;
  if (count >= READINGS_MOST) return { ...clear, said: { word: "set-full", facts: {} } };
  const { palpated_bpm } = open;
  const felt = palpated_bpm === undefined ? [] : [{ at: ["palpated_bpm"] }];
  const to = palpated_bpm === undefined ? { ...reading } : { ...reading, palpated_bpm };
  const patches = [...restPatches(open, at_ms), { at: inSetNow(open, "readings", count), to }, ...felt];
  return { ...done(clear, "act-add", { value }, patches), pad: EMPTY_PAD };
}

function takenAt(open: Open, at_ms: number): { taken_s?: number } {
  const taken_s = Math.floor((at_ms - (open.measurement.started_at_ms ?? at_ms)) / 1000);
  return taken_s >= 0 && taken_s <= TAKEN_S_MOST ? { taken_s } : {};
}

/** Adds numbers that were looked at already: after *Keep*, or *Add it again*. */
export function addedNumbers(open: Open, numbers: Numbers, at_ms: number, id: string): Open {
  const now = appended(open, { id, ...takenAt(open, at_ms), ...numbers }, at_ms, shortOf(numbers));
  return now.acts === open.acts ? now : { ...now, added: { at_ms, numbers } };
}

/** *Add*: the half-typed reading joins the set. A second tap is held back and shown; the unusual is asked first. */
export function added(open: Open, at_ms: number, id: string, limits: Limits): Open {
  const clear = without(open);
  const read = numbersOf(open);
  const last = open.added;
  if (last && at_ms - last.at_ms < SECOND_TAP_MS && (isEmpty(open.pad) || ("numbers" in read && same(read.numbers, last.numbers)))) {
    return { ...clear, pad: EMPTY_PAD, sheet: { kind: "second_tap", numbers: last.numbers } };
  }
  if (!("numbers" in read)) {
    return { ...clear, pad: { ...open.pad, field: read.field }, problem: { field: read.field, word: read.word, facts: read.facts } };
  }
  const questions = questionsOf(read.numbers, limits);
  if (questions.length > 0) return { ...clear, sheet: { kind: "unlikely", questions } };
  return addedNumbers(open, read.numbers, at_ms, id);
}

/** *Keep*: the unusual reading is added as it was typed. */
export function kept(open: Open, at_ms: number, id: string): Open {
  const read = numbersOf(open);
  return "numbers" in read ? addedNumbers(open, read.numbers, at_ms, id) : open;
}

/** An attempt without a number joins the set; what was half-typed is cleared by it. */
export function attempted(open: Open, beyond: NonNullable<Reading["beyond"]>, at_ms: number, id: string, value: string): Open {
  return appended(open, { id, ...takenAt(open, at_ms), beyond }, at_ms, value);
}

/** Finds a reading anywhere in the measurement. */
export function found(open: Open, id: string): { set: number; at: number; reading: Reading } | undefined {
  for (const [set, { readings }] of open.measurement.sets.entries()) {
    const at = readings.findIndex((reading) => reading.id === id);
    if (at >= 0) return { set, at, reading: readings[at] as Reading };
  }
  return undefined;
}

/** Sets a reading aside with a person's reason, or puts it back when no reason is given. */
export function setAside(open: Open, id: string, reason: Reading["set_aside"], value: string): Open {
  const place = found(open, id);
  if (!place) return open;
  const { sheet: _sheet, ...clear } = without(open);
  const at = ["measurement", "sets", place.set, "readings", place.at, "set_aside"];
  const word = reason ? "act-set-aside" : "act-put-back";
  return done(clear, word, { value }, [reason ? { at, to: reason } : { at }]);
}

/** Why a new set begins: what of the old one no longer holds. */
export type WhyNewSet = "moved" | "changed" | "site" | "method";

type Placed = Omit<ReturnType<typeof setNow>, "readings">;

/** What still holds of how the cuff lay: all of it, without the cuff, without where it lay, or without what measured. */
function stillHolding({ method, ...set }: Placed, why: WhyNewSet): Placed {
  const { gauge: _gauge, instrument: _instrument, ...withoutMachine } = set;
  const { cuff_width_mm: _width, ...withoutCuff } = set;
  const { site: _site, side: _side, limb_circumference_mm: _limb, cuff_above_heart_mm: _above, ...elsewhere } = withoutCuff;
  if (why === "method") return { method: method === "doppler" ? "oscillometric" : "doppler", ...withoutMachine };
  return { method, ...(why === "site" ? elsewhere : why === "changed" ? withoutCuff : set) };
}

/** Texts as typed of what no longer holds. */
const GONE: Record<WhyNewSet, readonly string[]> = {
  moved: [], changed: ["width", "width_other"], method: ["instrument"],
  site: ["width", "width_other", "circumference", "height", "height_side", "height_other"],
};

/** Begins a new set that carries over what still holds; another cuff or site is asked for next. One act. */
export function newSet(open: Open, why: WhyNewSet): Open {
  const { sheet: _sheet, ...clear } = without(open);
  const count = open.measurement.sets.length;
  if (count >= SETS_MOST) return { ...clear, said: { word: "sets-full", facts: {} } };
  const { readings: _readings, ...placed } = setNow(open);
  const texts = GONE[why].filter((field) => open.texts[field] !== undefined);
  const now = done(clear, "act-new-set", {}, [
    { at: ["measurement", "sets", count], to: { ...stillHolding(placed, why), readings: [] } },
    { at: ["part"], to: why === "changed" || why === "site" ? "cuff" : "readings" },
    ...texts.map((field) => ({ at: ["texts", field], to: "" })),
    ...(open.limb_from?.[count] === undefined ? [] : [{ at: ["limb_from", String(count)] }]),
  ]);
  const { added: _added, ...fresh } = now;
  return { ...fresh, pad: EMPTY_PAD };
}

/** The counted pulse goes to the latest reading of the measurement, or waits for the first one; it stays in sight to be judged. */
export function pulseTaken(open: Open, pulse: Pulse): Open {
  const { sets } = open.measurement;
  const set = sets.findLastIndex(({ readings }) => readings.length > 0);
  const at = (sets[set]?.readings.length ?? 0) - 1;
  const place = set < 0 ? ["palpated_bpm"] : ["measurement", "sets", set, "readings", at, "palpated_bpm"];
  const now = done(without(open), "act-pulse", { bpm: String(pulse.bpm) }, [{ at: place, to: pulse.bpm }]);
  return { ...now, sheet: { kind: "pulse", pulse } };
}

/** The rhythm is irregular: said by the person, after an uneven pulse. */
export function markedIrregular(open: Open): Open {
  const { sheet: _sheet, ...clear } = without(open);
  return done(clear, "act-choice", { field: "field-rhythm" }, [{ at: ["measurement", "rhythm"], to: "irregular" }]);
}

/** A quiet time of so many seconds begins now, within the same set; the readings go on when it is over. */
export function secondLook(open: Open, now_ms: number, need_s: number): Open {
  const { sheet: _sheet, ...clear } = without(open);
  const quiet = { at: ["quiet"], to: { ...quietFrom(now_ms, need_s, clockSeen()) } };
  return done(clear, "act-second-look", {}, [quiet, { at: ["finished"], to: false }, { at: ["part"], to: "readings" }]);
}

/** *Stop*: the visit ends here with what there is, and says why. One act. */
export function stopped(open: Open, why: WhyStopped): Open {
  const { sheet: _sheet, ...clear } = without(open);
  const outcome = { at: ["measurement", "outcome"], to: { kind: "stopped", why } };
  return done(clear, "act-stop", {}, [outcome, { at: ["finished"], to: true }, { at: ["part"], to: "result" }]);
}

/** Back to the readings, or to *Ready?* where it was not to be today: whoever goes on has no such outcome. */
export function wentOn(open: Open): Open {
  if (open.measurement.outcome?.kind === "not_today") return afterAll(open);
  if (open.measurement.outcome?.kind !== "stopped") return toPart(open, "readings");
  return toPart(done(without(open), "act-go-on", {}, [{ at: ["measurement", "outcome"] }]), "readings");
}

/** *Finish*: the result may be seen. */
export function finished(open: Open): Open {
  const { sheet: _sheet, ...clear } = without(open);
  return done(clear, "act-finish", {}, [{ at: ["finished"], to: true }, { at: ["part"], to: "result" }]);
}
