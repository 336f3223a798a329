/* Ready?: what four answers do to the open measurement. Row 0 of the next step (common practice): laboured breathing, collapse, a
   seizure, cold painful hind limbs: do not measure, help first. Pure; records and asks, and keeps nobody from measuring. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { without, withoutSheet, type Open } from "./open";
import { done, type Patch } from "./undo";

type Ready = NonNullable<Measurement["ready"]>;
export type Question = keyof Ready;
type Sign = NonNullable<Measurement["signs"]>[number];
type Circumstance = NonNullable<Measurement["circumstances"]>[number];

/** In the order they are asked: what can be seen from a distance first. */
export const QUESTIONS = ["breathing_easy", "awake", "no_pain", "safe_to_handle"] as const satisfies readonly Question[];

/** Answers that put help before any measuring. */
const HELP_FIRST = ["breathing_easy", "awake"] as const;

/** Why help comes first: a "no" to one of these questions, or a sign seen now. */
export type HelpFirstWhy = (typeof HELP_FIRST)[number] | "now";

/** A list with a word or without it; undefined when nothing is left in it. */
function listed<T>(list: readonly T[] | undefined, word: T, isThere: boolean): T[] | undefined {
  const others = (list ?? []).filter((one) => one !== word);
  const next = isThere ? [...others, word] : others;
  return next.length > 0 ? next : undefined;
}

function patch(at: (string | number)[], to: string[] | undefined): Patch {
  return to === undefined ? { at } : { at, to };
}

/** What follows from an answer: signs of distress, or pain as a circumstance. Only the answer in question is touched. */
function consequences({ measurement, texts }: Open, ready: Ready, question: Question): Patch[] {
  if (question === "no_pain") {
    const pain: Circumstance = "in_pain_or_ill";
    return [patch(["measurement", "circumstances"], listed(measurement.circumstances, pain, ready.no_pain === false))];
  }
  if (question === "safe_to_handle") return [];
  const distress: Sign = "distress";
  const isSeen = texts["help_now"] === "yes" || HELP_FIRST.some((one) => ready[one] === false);
  return [patch(["measurement", "signs"], listed(measurement.signs, distress, isSeen))];
}

/** All four are answered with yes. */
export function isReady({ measurement: { ready } }: Pick<Open, "measurement">): boolean {
  return QUESTIONS.every((question) => ready?.[question] === true);
}

/** Why help comes first; undefined when nothing says so, or the person chose to measure all the same. */
export function helpFirst({ measurement: { ready }, texts }: Pick<Open, "measurement" | "texts">): HelpFirstWhy | undefined {
  if (texts["all_the_same"] === "yes") return undefined;
  if (texts["help_now"] === "yes") return "now";
  return HELP_FIRST.find((question) => ready?.[question] === false);
}

/** One answer. The fourth yes folds the part and opens *Calm*: one act, so that one *Undo* brings both back. */
export function answered(open: Open, question: Question, isYes: boolean): Open {
  const ready = { ...open.measurement.ready, [question]: isYes };
  const opens = QUESTIONS.every((one) => ready[one] === true);
  const asked: Patch[] = isYes || question === "no_pain" || question === "safe_to_handle" ? [] : [{ at: ["texts", "all_the_same"], to: "" }];
  const now = done(without(open), "act-ready", {}, [
    { at: ["measurement", "ready"], to: ready },
    ...consequences(open, ready, question),
    ...asked,
    { at: ["part"], to: opens ? "calm" : "ready" },
  ]);
  return opens ? withoutSheet(now) : now;
}

/** *One of these now*: a sign of row 0 is seen, whatever the four answers say. */
export function helpNow(open: Open): Open {
  return done(without(open), "act-ready", {}, [
    { at: ["texts", "help_now"], to: "yes" },
    { at: ["texts", "all_the_same"], to: "" },
    patch(["measurement", "signs"], listed(open.measurement.signs, "distress", true)),
  ]);
}

/** The answers that put help first are taken back. */
export function askedAgain(open: Open): Open {
  const left = Object.entries(open.measurement.ready ?? {}).filter(([question, isYes]) => isYes || !HELP_FIRST.some((one) => one === question));
  const ready: Patch = { at: ["measurement", "ready"], ...(left.length > 0 ? { to: Object.fromEntries(left) } : {}) };
  return done(without(open), "act-ready", {}, [ready, { at: ["texts", "help_now"], to: "" }, patch(["measurement", "signs"], listed(open.measurement.signs, "distress", false))]);
}

/** *Measure all the same*: the person decides; the answer and its sign stay in the record. */
export function allTheSame(open: Open): Open {
  return done(without(open), "act-all-the-same", {}, [{ at: ["texts", "all_the_same"], to: "yes" }, { at: ["part"], to: "ready" }]);
}

/** It sleeps because it was made to: no sign of distress, and a number without a band. */
export function sedatedOnPurpose(open: Open): Open {
  const signs = listed(open.measurement.signs, "distress", open.measurement.ready?.breathing_easy === false);
  return done(without(open), "act-choice", { field: "field-state" }, [
    { at: ["measurement", "state"], to: "sedated" },
    patch(["measurement", "signs"], signs),
    { at: ["texts", "all_the_same"], to: "yes" },
  ]);
}
