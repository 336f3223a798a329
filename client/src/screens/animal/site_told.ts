/* A site not to be used as it was told in the form: read, or what is missing. Pure; days since 1970-01-01. */
import { parseNumber } from "../../contract/number";
import { say } from "../../contract/words";
import type { Problem } from "../../parts/problems";
import type { Form } from "../forms_begun";
import { isForGood, type SiteNotUsed, type Why } from "./sites_not_used";

export const WHYS = [
  "wound", "skin", "swelling", "fracture", "catheter", "punctured", "lump", "clot", "bandage", "painful", "missing", "other",
] as const satisfies readonly Why[];
export const SIDES = ["left", "right", "both"] as const;
/** Ends that are offered, in days from today; `open` until somebody takes it away, `other` typed. */
export const ENDS = ["open", "3", "7", "14", "28", "other"] as const;
const MOST_DAYS = 3650;

/** The end as days from today; undefined when it cannot be read. NaN where no end is told. */
export function daysOf({ chosen, texts }: Form): number | undefined {
  if (chosen["end"] !== "other") return Number(chosen["end"]);
  const read = parseNumber(texts["days"] ?? "");
  const days = "code" in read ? Number.NaN : read.value_tenths / 10;
  return days >= 1 && days <= MOST_DAYS ? days : undefined;
}

/** The site as it was told, or what is missing. */
export function siteOf(form: Form, day: number): SiteNotUsed | Problem[] {
  const { site, side, why, end } = form.chosen as { site?: SiteNotUsed["site"]; side?: string; why?: Why; end?: string };
  const isEnded = end !== "open" && why !== undefined && !isForGood({ why });
  const days = isEnded ? daysOf(form) : undefined;
  const problems = [
    ...(site ? [] : [{ field: "site", sentence: say("ask-site") }]),
    ...(site && site !== "tail_base" && !side ? [{ field: "side", sentence: say("ask-side") }] : []),
    ...(why ? [] : [{ field: "why", sentence: say("ask-site-why") }]),
    ...(isEnded && days === undefined ? [{ field: "days", sentence: say("ask-days", { most: String(MOST_DAYS) }) }] : []),
  ];
  if (problems.length > 0 || !site || !why) return problems;
  const sided = site !== "tail_base" && (side === "left" || side === "right") ? { side } as const : {};
  return { site, ...sided, why, ...(days === undefined ? {} : { until_day: day + days }) };
}
