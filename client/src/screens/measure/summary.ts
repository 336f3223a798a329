/* One line for a folded part: what was noted in it, and nothing of what was not. */
import "../../contract/calm_words";
import { say } from "../../contract/words";
import { cm, timeOfDay } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import { judged } from "./judged";
import { MORE_QUESTIONS, notedMore } from "./more_noted";
import { setNow, type Open, type Part } from "./open";
import { quietOfVisit, waited_s } from "./quiet";
import { QUESTIONS } from "./ready";
import { phraseOf } from "./wording";

const joined = (words: readonly (string | false | undefined)[]): string | undefined => words.filter(Boolean).join(", ") || undefined;

function readyLine({ measurement: { ready } }: Open): string | undefined {
  const said = QUESTIONS.filter((question) => ready?.[question] !== undefined);
  const no = said.filter((question) => ready?.[question] === false);
  if (no.length > 0) return say("ready-said-no", { what: no.map((question) => say(`ready-short-${kebab(question)}`)).join(", ") });
  if (said.length === 0) return undefined;
  return said.length === QUESTIONS.length ? say("ready-all") : say("ready-some", { n: said.length });
}

function quietLine(open: Open): string | undefined {
  const { rest_s } = open.measurement;
  const quiet = quietOfVisit(open, Date.now());
  if (rest_s !== undefined) return say("summary-rest", { minutes: String(Math.floor(rest_s / 60)) });
  if (quiet && quiet.to_ms === undefined) return say("summary-quiet-since", { from: timeOfDay(quiet.from_ms) });
  const waited = quiet && waited_s(quiet, quiet.from_ms);
  return waited === undefined ? undefined : say("summary-rest", { minutes: String(Math.floor(waited / 60)) });
}

function calmLine(open: Open): string | undefined {
  const { demeanour, state, place } = open.measurement;
  return joined([
    demeanour && say(`demeanour-${demeanour}`),
    state && state !== "awake" && say(`state-${state}`),
    quietLine(open),
    place && say(`place-${place}`),
  ]);
}

/** What was noted in the folded rest of *Calm*; where nothing was, what could be. */
export function moreLine(open: Open): string {
  return joined(MORE_QUESTIONS.map((question) => notedMore(open, question))) ?? say("summary-more-none");
}

/** The method stands from the start: it is noted once something else of the cuff is, or the part was left. */
function cuffLine(open: Open): string | undefined {
  const { method, limb_circumference_mm: limb, cuff_width_mm: width, site } = setNow(open);
  const noted = joined([
    limb !== undefined && say("summary-limb", { cm: cm(limb) }),
    width !== undefined && say("used-cuff", { mm: String(width) }),
    site && say(`site-${kebab(site)}`),
  ]);
  return noted || open.texts["left_cuff"] === "yes" ? joined([say(`method-${method}`), noted]) : undefined;
}

/** The folded part in one line; undefined where nothing was noted. The result says nothing before *Finish*. */
export function summaryOf(open: Open, part: Part): string | undefined {
  if (part === "ready") return readyLine(open);
  if (part === "calm") return calmLine(open);
  if (part === "cuff") return cuffLine(open);
  if (part === "result") return open.finished ? phraseOf(judged(open)) : undefined;
  const n = open.measurement.sets.reduce((sum, set) => sum + set.readings.length, 0);
  return n > 0 ? say("readings-count", { n }) : undefined;
}
