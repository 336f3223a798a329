/* The open measurement: the growing document of measurement.1, and beside it everything a killed tab must find again:
   the part that is open, half-typed text, what is asked just now, and the acts that can be taken back.
   Plain JSON, since it is kept as a draft. Must not compute a rule. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import type { Draft, Visit } from "../../offline/journal";
import { DAY_MS } from "../../parts/figures";
import { dayOf } from "../animal/sites_not_used";
import type { StepSeen } from "./clock_steps";
import { EMPTY_PAD, type Pad } from "./pad";
import type { Pulse } from "./pulse_tap";
import { done, type Act, type Patch, type Plain } from "./undo";

/** After a pause longer than this it is another visit: neither its quiet time nor its place on the screen goes on, ms. */
export const SAME_VISIT_MS = 4 * 3_600_000;

export type Part = "ready" | "calm" | "cuff" | "readings" | "result";
export type CuffSet = Measurement["sets"][number];
export type Reading = CuffSet["readings"][number];
/** How the last visit placed the cuff: what can be taken over in one tap. */
export type LastSet = Partial<Pick<CuffSet, "site" | "side" | "posture" | "restraint" | "gauge" | "instrument" | "limb_circumference_mm" | "cuff_width_mm">>;
/** The visit a limb circumference was taken over from: whose, and its day (days since 1970). */
export type LimbFrom = { patient: string; name: string; day: number };
export type WhyStopped = NonNullable<Measurement["outcome"]>["why"];
export type Numbers = Pick<Reading, "systolic_mmhg" | "mean_mmhg" | "diastolic_mmhg" | "pulse_bpm">;

/** A sentence to be said: its id and the facts it needs. */
export interface Saying {
  word: string;
  facts: Record<string, string | number>;
}

/** What lies over the number pad just now. `pick` and `reasons` speak of the reading `id`. */
export type Sheet =
  | { kind: "list"; id?: string }
  | { kind: "reasons"; id: string }
  | { kind: "unlikely"; questions: Saying[] }
  | { kind: "second_tap"; numbers: Numbers }
  | { kind: "new_set" }
  /** The pulse that is tapped; `pulse` once it is counted, `uneven` once the person said so. */
  | { kind: "pulse"; pulse?: Pulse; uneven?: boolean }
  | { kind: "stop" }
  /** Over *Ready?*: the reason why it is not measured today. */
  | { kind: "not_today" };

export interface Open {
  id: string;
  /** Name shown while measuring; absent until an animal is chosen. */
  name?: string;
  mark?: string;
  measurement: Measurement;
  last?: LastSet;
  /** The visit that is of, which need not be the latest one: its day (days since 1970), and how it measured. */
  last_of?: { day: number; method: CuffSet["method"] };
  /** Where the limb of a set (from 0) came from; null = measured today, and a set that is not named has it from the one before. */
  limb_from?: Record<string, LimbFrom | null>;
  /** Limbs that were taken out since the visit is filed under another animal now. */
  limb_out?: { from: LimbFrom; limbs: { set: number; mm: number }[] };
  /** The quiet time that runs or ran: a start and a need, so that it is exact after the page was hidden or killed. */
  quiet?: {
    from_ms: number;
    need_s: number;
    /** Ended before the first reading: what came after is no quiet time. */
    to_ms?: number;
    /** By how many seconds the phone's clock was set while it ran, as far as it is known. */
    step_s?: number;
    /** The page it was begun on, and how many steps of the clock that had seen by then. */
    page?: number;
    page_steps?: number;
    /** The steps since then, as each page saw them. */
    seen?: StepSeen[];
  };
  /** It is the one on the screen: an app that is killed comes back to it. */
  at?: "open";
  part: Part;
  finished: boolean;
  /** The choice of an animal is open: File was pressed without one. */
  choosing?: boolean;
  /** Text as typed, by field; wrong text stays. */
  texts: Record<string, string>;
  pad: Pad;
  sheet?: Sheet;
  /** What is wrong with the field that was committed last. */
  problem?: Saying & { field: string };
  /** A pulse tapped before the first reading, in beats a minute: it goes to the next one. */
  palpated_bpm?: number;
  /** The latest add, to know a second tap by. */
  added?: { at_ms: number; numbers: Numbers };
  /** Said once about the latest act. */
  said?: Saying;
  acts: Act[];
}

/** The set that is being measured: the latest. */
export function setNow(open: Open): CuffSet {
  const set = open.measurement.sets[open.measurement.sets.length - 1];
  if (!set) throw new Error("a measurement has at least one set");
  return set;
}

/** Where a field of the set now lies in the open measurement. */
export function inSetNow(open: Open, ...path: (string | number)[]): (string | number)[] {
  return ["measurement", "sets", open.measurement.sets.length - 1, ...path];
}

export interface Start {
  id: string;
  now_ms: number;
  species: Measurement["species"];
  method: CuffSet["method"];
  patient?: { id: string; name: string; mark?: string; born_on_day?: number };
  /** The latest visit: what the rules compare with. */
  last?: Visit;
  /** The latest visit that noted how the cuff lay, where that is an earlier one. */
  placed?: Visit;
}

/** A new open measurement, carrying over what is known of the animal and how it was measured last. */
export function started(start: Start): Open {
  const { patient, last, placed = last } = start;
  const age_months = ageInMonths(patient?.born_on_day, start.now_ms);
  const previous = last && previousOf(last, start.now_ms);
  const lastSet = placed && lastSetOf(placed);
  const method = placed && resultSetOfVisit(placed)?.method;
  const measurement: Measurement = {
    ...(patient ? { patient: patient.id } : {}),
    started_at_ms: start.now_ms,
    species: start.species,
    ...(age_months === undefined ? {} : { age_months }),
    ...(previous ? { previous } : {}),
    sets: [{ method: start.method, readings: [] }],
  };
  return {
    id: start.id,
    ...(patient ? { name: patient.name } : {}),
    ...(patient?.mark ? { mark: patient.mark } : {}),
    ...(lastSet ? { last: lastSet } : {}), ...(lastSet && method ? { last_of: { day: dayOf(placed.startedMs), method } } : {}),
    measurement, part: "ready", finished: false, texts: {}, pad: EMPTY_PAD, acts: [],
  };
}

/** Whole months from a day of birth; absent when it is not known or lies ahead. */
export function ageInMonths(born_on_day: number | undefined, now_ms: number): number | undefined {
  if (born_on_day === undefined) return undefined;
  const [born, now] = [new Date(born_on_day * DAY_MS), new Date(now_ms)];
  const months = (now.getUTCFullYear() - born.getUTCFullYear()) * 12 + now.getUTCMonth() - born.getUTCMonth();
  const whole = now.getUTCDate() < born.getUTCDate() ? months - 1 : months;
  return whole >= 0 && whole <= 600 ? whole : undefined;
}

const TAKEN_OVER = ["site", "side", "posture", "restraint", "gauge", "instrument", "limb_circumference_mm", "cuff_width_mm"] as const;

/** The set its result speaks of, without its readings and without what was not noted. */
function lastSetOf(last: Visit): LastSet | undefined {
  const set = resultSetOfVisit(last);
  const noted = set && TAKEN_OVER.flatMap((key) => (set[key] === undefined ? [] : [[key, set[key]] as const]));
  return noted && noted.length > 0 ? Object.fromEntries(noted) : undefined;
}

/** The set a filed visit's result speaks of; undefined in a visit without any set. */
export function resultSetOfVisit({ letter }: Visit): CuffSet | undefined {
  const { sets } = letter.body as unknown as Measurement;
  const assessment = letter.assessment as { result_set?: number } | undefined;
  return sets[assessment?.result_set ?? sets.length - 1];
}

/** Whether its result's set says where the cuff lay or which one it was; in an emergency neither is noted. */
export function isPlaced(visit: Visit): boolean {
  const set = resultSetOfVisit(visit);
  return set?.site !== undefined || set?.cuff_width_mm !== undefined;
}

/** A cuff was on: a visit that was put off says nothing about how it was measured. */
function wasMeasured({ letter }: Visit): boolean {
  const { sets = [] } = letter.body as { sets?: CuffSet[] };
  return sets.some(({ readings }) => readings.length > 0);
}

/** Of an animal's visits, newest first: the latest that measured, and the latest of those that noted how the cuff lay. */
export function lastsOf(visits: readonly Visit[]): Pick<Start, "last" | "placed"> {
  const measured = visits.filter(wasMeasured);
  const [last, placed] = [measured[0], measured.find(isPlaced)];
  return { ...(last ? { last } : {}), ...(placed ? { placed } : {}) };
}

/** What the rules compare with: how the last visit measured. */
function previousOf(last: Visit, now_ms: number): Measurement["previous"] {
  const body = last.letter.body as unknown as Measurement;
  const assessment = last.letter.assessment as { result_set?: number; sets?: { cuff?: { share_permille?: number } }[] } | undefined;
  const at = assessment?.result_set ?? body.sets.length - 1;
  const set = resultSetOfVisit(last);
  if (!set) return undefined;
  const share = assessment?.sets?.[at]?.cuff?.share_permille;
  const days_ago = dayOf(now_ms) - dayOf(last.startedMs); // by the calendar: yesterday afternoon is not today
  return {
    method: set.method,
    ...(set.site ? { site: set.site } : {}),
    ...(set.posture ? { posture: set.posture } : {}),
    ...(body.place ? { place: body.place } : {}),
    ...(share === undefined ? {} : { cuff_share_permille: share }),
    ...(set.instrument ? { instrument: set.instrument } : {}),
    ...(days_ago >= 0 && days_ago <= 36_500 ? { days_ago } : {}),
  };
}

/** One choice or field changed, as an act that can be taken back. `to` absent takes the field away. */
export function changed(open: Open, field: string, at: (string | number)[], to: Plain | undefined): Open {
  const patch: Patch = to === undefined ? { at } : { at, to };
  return done(without(open), "act-choice", { field }, [patch]);
}

/** The open measurement with nothing said or wrong about the act before. */
export function without(open: Open): Open {
  const { problem: _problem, said: _said, ...rest } = open;
  return rest;
}

/** The open measurement with nothing lying over the keys. */
export function withoutSheet(open: Open): Open {
  const { sheet: _sheet, ...rest } = open;
  return rest;
}

/** Text as typed into a field; not an act of its own, the field's committed value is. */
export function withText(open: Open, field: string, text: string): Open {
  const { problem: _problem, ...rest } = open;
  return { ...rest, texts: { ...open.texts, [field]: text } };
}

/** The draft the phone keeps. */
export function draftOf(open: Open, now_ms: number): Draft {
  return { id: open.id, updatedMs: now_ms, content: open };
}

/** What a kept draft holds. A draft of the first build knows a part "setup", which is *Calm* now. */
export function openOf(draft: Draft): Open {
  const open = draft.content as Open;
  return (open.part as string) === "setup" ? { ...open, part: "calm" } : open;
}

/** Goes to a part; the part that is left shows from now on what could not be read in it. */
export function toPart(open: Open, part: Part): Open {
  const { sheet: _sheet, choosing: _choosing, ...rest } = open;
  return { ...rest, part, texts: { ...open.texts, [`left_${open.part}`]: "yes" } };
}
