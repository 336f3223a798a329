/* An animal and how it was measured, in words: age, sites, handling, the placing of a cuff. Must not decide anything. */
import type { Patient1 as Patient } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { cm, dayOnly } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import { inOneLine } from "./animals";
import { ageInMonths, type CuffSet } from "../measure/open";
import { isHeldBeside } from "../measure/sites";
import { ageFacts } from "./patient_facts";
import { isForGood, type SiteNotUsed } from "./sites_not_used";

/** Species, sex, breed, age, mark: what is known of them. */
export function whoLine(patient: Patient, now_ms: number): string {
  const { species, sex, breed, mark, born_on_day } = patient;
  const months = ageInMonths(born_on_day, now_ms);
  const told = months === undefined ? undefined : ageFacts(months);
  return inOneLine(
    say(`species-${species}`), sex && say(`sex-${kebab(sex)}`), breed, told && say(`age-${told.unit}-about`, { n: told.n }), mark,
  );
}

/** "Forearm · Left". */
export function placeOf({ site, side }: Pick<SiteNotUsed, "site" | "side">): string {
  return inOneLine(say(`site-${kebab(site)}`), side ? say(`side-${side}`) : site !== "tail_base" && say("side-both"));
}

/** "Forearm · Left · Catheter · until 9 Dec 2026". `day` is today, days since 1970-01-01. */
export function siteLine(site: SiteNotUsed, day: number): string {
  const { until_day } = site;
  const facts = { place: placeOf(site), why: say(`site-why-${site.why}`), day: until_day === undefined ? "" : dayOnly(until_day) };
  if (until_day === undefined) return say(isForGood(site) ? "site-for-good" : "site-open", facts);
  return say(until_day < day ? "site-past" : "site-until", facts);
}

/** Method, site and cuff of a set: what makes two visits comparable. */
export function placingLine(set: CuffSet): string {
  const { method, site, side, cuff_width_mm: width } = set;
  return inOneLine(
    say(`method-${method}`), site && say(`site-${kebab(site)}`), side && say(`side-${side}`),
    width === undefined ? say("used-cuff-none") : say("used-cuff", { mm: String(width) }),
  );
}

/** All that was noted of how it was measured last, in one line. */
export function measuredLine(set: CuffSet): string {
  const { posture, restraint, limb_circumference_mm: limb, instrument } = set;
  return inOneLine(
    placingLine(set), limb !== undefined && say("summary-limb", { cm: cm(limb) }), posture && say(`posture-${kebab(posture)}`),
    restraint && isHeldBeside(set) && say(`restraint-${restraint}`), instrument,
  );
}
