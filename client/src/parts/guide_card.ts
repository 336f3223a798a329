/* Which sentences a guide holds, in order, and the figures in them, read from the rule documents. Must carry no figure of its own. */
import { hasGuide, sayGuide } from "../contract/guide_words";
import { ruleSet } from "../contract/rule_documents";
import type { Facts } from "../contract/words";
import { permille, tenths } from "./figures";

export const GUIDE_STEPS = ["ready", "calm", "cuff", "site", "posture", "level", "readings", "result"] as const;
export type GuideStep = (typeof GUIDE_STEPS)[number];
export type GuideMethod = "doppler" | "oscillometric";
type Species = "dog" | "cat";

const SECONDS_PER_MINUTE = 60;

/** Every figure any sentence of a guide may need. */
export function guideFacts(species: Species): Facts {
  const { cuff, cautions, agreement, height } = ruleSet().documents;
  const [low = 0, high = 0] = cuff.numbers.good_permille[species];
  return {
    minutes: String(cautions.numbers.rest_short_s[species] / SECONDS_PER_MINUTE),
    target: permille(cuff.numbers.target_permille[species]),
    low: permille(low),
    high: permille(high),
    level_cm: tenths(height.numbers.level_mm.dog),
    least: String(agreement.numbers.window.least),
    most: String(agreement.numbers.window.most),
    gap: String(cautions.numbers.gap_short_s),
    stop: String(agreement.numbers.stop_today_readings),
  };
}

/** `guide-cuff-1`, `guide-cuff-2` … as far as there are any. */
function numbered(start: string): string[] {
  const ids: string[] = [];
  while (hasGuide(`${start}-${ids.length + 1}`)) ids.push(`${start}-${ids.length + 1}`);
  return ids;
}

/** Ids of a card: what holds for all, then for the species, then for the method where it is known. */
export function guideIds(step: GuideStep, species: Species, method?: GuideMethod): string[] {
  const starts = [`guide-${step}`, `guide-${step}-${species}`, ...(method ? [`guide-${step}-${method}`] : [])];
  return starts.flatMap(numbered);
}

/** The sentences of a card as they are read. */
export function guideSentences(step: GuideStep, species: Species, method?: GuideMethod): string[] {
  const facts = guideFacts(species);
  return guideIds(step, species, method).map((id) => sayGuide(id, facts));
}
