/* One line for a folded part: what was noted in it. Must not hide that something was not. */
import "../../contract/calm_words";
import { say } from "../../contract/words";
import { cm, timeOfDay } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import { judged } from "./judged";
import { setNow, type Open, type Part } from "./open";
import { quietOfVisit, waited_s } from "./quiet";
import { QUESTIONS } from "./ready";
import { phraseOf } from "./wording";

function readyLine({ measurement: { ready } }: Open): string {
  const said = QUESTIONS.filter((question) => ready?.[question] !== undefined);
  const no = said.filter((question) => ready?.[question] === false);
  if (no.length > 0) return say("ready-said-no", { what: no.map((question) => say(`ready-short-${kebab(question)}`)).join(", ") });
  if (said.length === 0) return say("ready-none");
  return said.length === QUESTIONS.length ? say("ready-all") : say("ready-some", { n: said.length });
}

function quietLine(open: Open): string {
  const { rest_s } = open.measurement;
  const quiet = quietOfVisit(open, Date.now());
  if (rest_s !== undefined) return say("summary-rest", { minutes: String(Math.floor(rest_s / 60)) });
  if (quiet && quiet.to_ms === undefined) return say("summary-quiet-since", { from: timeOfDay(quiet.from_ms) });
  const waited = quiet && waited_s(quiet, quiet.from_ms);
  return waited === undefined ? say("summary-rest-none") : say("summary-rest", { minutes: String(Math.floor(waited / 60)) });
}

function calmLine(open: Open): string {
  const { demeanour, state, place } = open.measurement;
  return [
    demeanour && say(`demeanour-${demeanour}`),
    state && state !== "awake" && say(`state-${state}`),
    quietLine(open),
    place && say(`place-${place}`),
  ].filter(Boolean).join(", ");
}

/** What was noted in the folded rest of *Calm*; where nothing was, what could be. */
export function moreLine({ measurement }: Open): string {
  const { place, owner_present: owner, circumstances, rhythm, drugs = [], treatment } = measurement;
  const noted = [
    place && say(`place-${place}`),
    owner !== undefined && say(owner ? "summary-owner-yes" : "summary-owner-no"),
    circumstances?.length === 0 && say("summary-nothing-happened"),
    ...(circumstances ?? []).map((one) => say(`circumstance-${kebab(one)}`)),
    rhythm && say(`rhythm-${rhythm}`),
    drugs.length > 0 && say("summary-drugs", { n: drugs.length }),
    treatment && say("summary-treatment", { word: say(`treatment-${treatment}`).toLocaleLowerCase() }),
  ].filter(Boolean);
  return noted.length > 0 ? noted.join(", ") : say("summary-more-none");
}

function cuffLine(open: Open): string {
  const { method, limb_circumference_mm: limb, cuff_width_mm: width, site } = setNow(open);
  return [
    say(`method-${method}`),
    limb !== undefined && say("summary-limb", { cm: cm(limb) }),
    width === undefined ? say("used-cuff-none") : say("used-cuff", { mm: String(width) }),
    site && say(`site-${kebab(site)}`),
  ].filter(Boolean).join(", ");
}

/** The folded part in one line. The result says nothing before *Finish*. */
export function summaryOf(open: Open, part: Part): string {
  if (part === "ready") return readyLine(open);
  if (part === "calm") return calmLine(open);
  if (part === "cuff") return cuffLine(open);
  if (part === "readings") return say("readings-count", { n: open.measurement.sets.reduce((sum, set) => sum + set.readings.length, 0) });
  return open.finished ? phraseOf(judged(open)) : "";
}
