/* Not today: a visit that ends before a cuff goes on, with its reason. A result like any other. Pure; a stop in mid-series is series.ts. */
import { toPart, without, withoutSheet, withText, type Open, type WhyStopped } from "./open";
import { QUESTIONS, type Question } from "./ready";
import { done, patched } from "./undo";

/** As many characters as the wire document takes of a note. */
export const NOTE_MOST = 200;

const ALL = [
  "too_distressed", "not_safe", "in_pain", "breathing", "not_responsive", "owner_refused", "no_cuff", "equipment", "bite_or_scratch", "other",
] as const satisfies readonly WhyStopped[];

const WHY_OF: Record<Question, WhyStopped> = {
  breathing_easy: "breathing", awake: "not_responsive", no_pain: "in_pain", safe_to_handle: "not_safe",
};

/** The reasons, those that were answered with no first. */
export function reasonsNow({ measurement: { ready } }: Pick<Open, "measurement">): WhyStopped[] {
  const said = QUESTIONS.filter((question) => ready?.[question] === false).map((question) => WHY_OF[question]);
  return [...said, ...ALL.filter((why) => !said.includes(why))];
}

/** Asks why it is not measured today. */
export function asksNotToday(open: Open): Open {
  return { ...without(open), sheet: { kind: "not_today" } };
}

/** The visit ends here, for this reason; only filing is left. One act. */
export function notToday(open: Open, why: WhyStopped): Open {
  return done(withoutSheet(without(open)), "act-not-today", {}, [
    { at: ["measurement", "outcome"], to: { kind: "not_today", why } },
    { at: ["finished"], to: true },
    { at: ["part"], to: "result" },
  ]);
}

/** Back to *Ready?*: whoever measures after all has no such outcome. */
export function afterAll(open: Open): Open {
  const patches = [{ at: ["measurement", "outcome"] }, { at: ["finished"], to: false }, { at: ["texts", "note"], to: "" }];
  return toPart(done(without(open), "act-go-on", {}, patches), "ready");
}

/** Is the note longer than it may be? Such a note is kept as typed and goes nowhere. */
export function isNoteLong({ texts }: Pick<Open, "texts">): boolean {
  return [...(texts["note"] ?? "").trim()].length > NOTE_MOST;
}

/** A few words beside the reason, as typed; not an act of its own. */
export function withNote(open: Open, text: string): Open {
  const now = withText(open, "note", text);
  if (!now.measurement.outcome) return now;
  const note = text.trim();
  const at = ["measurement", "outcome", "note"];
  return patched(now, note && !isNoteLong(now) ? { at, to: note } : { at })[0];
}
