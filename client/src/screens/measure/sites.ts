/* Where a cuff may lie on this animal: the order in which sites and postures are offered, and those not to be used today.
   The order is one of offering only (common practice: a cat above the elbow and in the lap, a dog on the forearm); nothing is
   judged here, and a person may use a barred site all the same. Pure; which of them hold on a day, sites_not_used.ts says. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import type { SiteNotUsed } from "../animal/sites_not_used";
import type { CuffSet } from "./open";

type Species = Measurement["species"];
export type Site = NonNullable<CuffSet["site"]>;
export type Side = NonNullable<CuffSet["side"]>;
type Posture = NonNullable<CuffSet["posture"]>;

export const SITES: Record<Species, readonly Site[]> = {
  cat: ["above_elbow", "tail_base", "forearm", "above_hock", "metatarsus"],
  dog: ["forearm", "metatarsus", "above_hock", "tail_base", "above_elbow"],
};

export const POSTURES: Record<Species, readonly Posture[]> = {
  cat: ["in_lap", "sternal", "lateral", "sitting", "standing"],
  dog: ["lateral", "sternal", "sitting", "standing", "in_lap"],
};

export const SIDES: readonly Side[] = ["left", "right"];

/** Whether how it was held is worth a word beside its posture: in the lap is said once, and that nobody held it not at all. */
export function isHeldBeside({ posture, restraint }: Pick<CuffSet, "posture" | "restraint">): boolean {
  return restraint !== undefined && restraint !== "none" && !(posture === "in_lap" && restraint === "lap");
}

/** The one site that has no side. */
export function hasSide(site: Site | undefined): boolean {
  return site !== "tail_base";
}

/** Why no cuff may go on this side of a site; undefined when one may. Of the tail base any entry counts. */
export function barredSide(barred: readonly SiteNotUsed[], site: Site | undefined, side: Side): SiteNotUsed | undefined {
  return barred.find((one) => one.site === site && (one.side === undefined || one.side === side));
}

/** Why a site cannot be used at all: barred as a whole, or on both of its sides. */
export function barredSite(barred: readonly SiteNotUsed[], site: Site): SiteNotUsed | undefined {
  if (!hasSide(site)) return barred.find((one) => one.site === site);
  const [left, right] = SIDES.map((side) => barredSide(barred, site, side));
  return left && right;
}

/** Why the cuff of a set may not lie where it lies; with no side noted only a site barred as a whole counts. */
export function barredPlace(barred: readonly SiteNotUsed[], { site, side }: Pick<CuffSet, "site" | "side">): SiteNotUsed | undefined {
  if (!site) return undefined;
  return barredSite(barred, site) ?? (side && barredSide(barred, site, side));
}
