/* Ready?: what four answers do to the open measurement. Row 0 of the next step (common practice): laboured breathing, collapse, a
   seizure, cold painful hind limbs: do not measure, help first. Pure; records and asks, and keeps nobody from measuring. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { PAIN_BEFORE } from "./circumstances";
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

/** Pain stands among the circumstances from a "no" on; a "yes" after it brings back what a person had ticked there before. */
function painPatches({ measurement: { circumstances, ready }, texts }: Open, isFree: boolean): Patch[] {
  const [pain, at]: [Circumstance, string[]] = ["in_pain_or_ill", ["measurement", "circumstances"]];
  const [wasFree, isThere] = [ready?.no_pain !== false, circumstances?.includes(pain) === true];
  if (!isFree) {
    const before = isThere ? "ticked" : circumstances?.length === 0 ? "none" : "";
    return [patch(at, listed(circumstances, pain, true)), ...(wasFree ? [{ at: [...PAIN_BEFORE], to: before }] : [])];
  }
  if (wasFree || !isThere || texts["pain_before"] === "ticked") return [];
  return [patch(at, listed(circumstances, pain, false) ?? (texts["pain_before"] === "none" ? [] : undefined))];
}

/** Whether what was said here puts help first, whatever is seen elsewhere. One that sleeps on purpose is in no distress by that. */
function saysHelp(ready: Ready | undefined, texts: Open["texts"]): boolean {
  const asleep = texts["asleep"] === "yes";
  return texts["help_now"] === "yes" || HELP_FIRST.some((one) => ready?.[one] === false && !(asleep && one === "awake"));
}

/** The sign of distress while something said here puts help first. One that stood there before is not for these answers to take away. */
function distressPatches({ measurement: { signs, ready }, texts }: Open, isSeen: boolean): Patch[] {
  const distress: Sign = "distress";
  const was = saysHelp(ready, texts);
  const at = ["measurement", "signs"];
  if (!isSeen) return was && texts["distress_before"] !== "yes" ? [patch(at, listed(signs, distress, false))] : [];
  const before = { at: ["texts", "distress_before"], to: signs?.includes(distress) ? "yes" : "" };
  return [patch(at, listed(signs, distress, true)), ...(was ? [] : [before])];
}

/** What follows from an answer: signs of distress, or pain as a circumstance. Only the answer in question is touched. */
function consequences(open: Open, ready: Ready, question: Question): Patch[] {
  if (question === "no_pain") return painPatches(open, ready.no_pain === true);
  if (question === "safe_to_handle") return [];
  if (question === "breathing_easy") return distressPatches(open, saysHelp(ready, open.texts));
  return [...distressPatches(open, saysHelp(ready, { ...open.texts, asleep: "" })), { at: ["texts", "asleep"], to: "" }];
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
    ...consequences(open, ready, question),
    { at: ["measurement", "ready"], to: ready },
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
    ...distressPatches(open, true),
  ]);
}

/** The answers that put help first are taken back. */
export function askedAgain(open: Open): Open {
  const left = Object.entries(open.measurement.ready ?? {}).filter(([question, isYes]) => isYes || !HELP_FIRST.some((one) => one === question));
  const ready: Patch = { at: ["measurement", "ready"], ...(left.length > 0 ? { to: Object.fromEntries(left) } : {}) };
  return done(without(open), "act-ready", {}, [ready, { at: ["texts", "help_now"], to: "" }, ...distressPatches(open, false)]);
}

/** *Measure all the same*: the person decides; the answer and its sign stay in the record. */
export function allTheSame(open: Open): Open {
  return done(without(open), "act-all-the-same", {}, [{ at: ["texts", "all_the_same"], to: "yes" }, { at: ["part"], to: "ready" }]);
}

/** It sleeps because it was made to: no sign of distress, and a number without a band. */
export function sedatedOnPurpose(open: Open): Open {
  return done(without(open), "act-choice", { field: "field-state" }, [
    { at: ["measurement", "state"], to: "sedated" },
    ...distressPatches(open, open.measurement.ready?.breathing_easy === false),
    { at: ["texts", "asleep"], to: "yes" },
    { at: ["texts", "all_the_same"], to: "yes" },
  ]);
}
