/* Where a cuff may lie on this animal: the order in which sites and postures are offered, and those not to be used today.
   The order is one of offering only (common practice: a cat above the elbow and in the lap, a dog on the forearm); nothing is
   judged here, and a person may use a barred site all the same. Pure; days are counted from 1970-01-01. */
import type { Measurement1 as Measurement, Patient1 as Patient } from "../../contract/wire_types";
import type { CuffSet } from "./open";

type Species = Measurement["species"];
export type Site = NonNullable<CuffSet["site"]>;
export type Side = NonNullable<CuffSet["side"]>;
type Posture = NonNullable<CuffSet["posture"]>;
export type NotUsed = NonNullable<Patient["sites_not_used"]>[number];

export const SITES: Record<Species, readonly Site[]> = {
  cat: ["above_elbow", "tail_base", "forearm", "above_hock", "metatarsus"],
  dog: ["forearm", "metatarsus", "above_hock", "tail_base", "above_elbow"],
};

export const POSTURES: Record<Species, readonly Posture[]> = {
  cat: ["in_lap", "sternal", "lateral", "sitting", "standing"],
  dog: ["lateral", "sternal", "sitting", "standing", "in_lap"],
};

export const SIDES: readonly Side[] = ["left", "right"];

/** The one site that has no side. */
export function hasSide(site: Site | undefined): boolean {
  return site !== "tail_base";
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** The calendar day where this phone is. `offset_min` is minutes behind UTC, as `Date.getTimezoneOffset` gives it. */
export function dayOf(at_ms: number, offset_min = new Date(at_ms).getTimezoneOffset()): number {
  return Math.floor((at_ms - offset_min * MINUTE_MS) / DAY_MS);
}

/** What is in force on a day: its last day is that day or later, or nobody set an end. */
export function inForce(all: readonly NotUsed[] | undefined, day: number): NotUsed[] {
  return (all ?? []).filter(({ until_day }) => until_day === undefined || until_day >= day);
}

/** Why no cuff may go on this side of a site; undefined when one may. Of the tail base any entry counts. */
export function barredSide(barred: readonly NotUsed[], site: Site | undefined, side: Side): NotUsed | undefined {
  return barred.find((one) => one.site === site && (one.side === undefined || one.side === side));
}

/** Why a site cannot be used at all: barred as a whole, or on both of its sides. */
export function barredSite(barred: readonly NotUsed[], site: Site): NotUsed | undefined {
  if (!hasSide(site)) return barred.find((one) => one.site === site);
  const [left, right] = SIDES.map((side) => barredSide(barred, site, side));
  return left && right;
}

/** Why the cuff of a set may not lie where it lies; with no side noted only a site barred as a whole counts. */
export function barredPlace(barred: readonly NotUsed[], { site, side }: Pick<CuffSet, "site" | "side">): NotUsed | undefined {
  if (!site) return undefined;
  return barredSite(barred, site) ?? (side && barredSide(barred, site, side));
}
