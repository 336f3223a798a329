/* Where no cuff may go, today: which of an animal's sites hold on a day, and how one is added or ended. Pure; days since 1970-01-01.
   Must not forget one that is over: it stays in the letter and is listed as past. */
import type { Patient1 as Patient } from "../../contract/wire_types";
import { DAY_MS } from "../../parts/figures";

export type SiteNotUsed = NonNullable<Patient["sites_not_used"]>[number];
/** A place on the body, whatever keeps a cuff from it. */
export type Place = Pick<SiteNotUsed, "site" | "side">;
export type Why = SiteNotUsed["why"];

const MINUTE_MS = 60_000;
/** As many as the wire document takes. */
const MOST = 12;

/** The reader's own calendar day of an instant; `offset_min` is minutes east of UTC. */
export function dayOf(at_ms: number, offset_min: number = -new Date(at_ms).getTimezoneOffset()): number {
  return Math.floor((at_ms + offset_min * MINUTE_MS) / DAY_MS);
}

/** The last day it holds is a day on which it holds. */
export function holdsOn({ until_day }: SiteNotUsed, day: number): boolean {
  return until_day === undefined || until_day >= day;
}

/** The sites that hold on a day, in the order they were told. */
export function sitesInForce({ sites_not_used = [] }: Patient, day: number): SiteNotUsed[] {
  return sites_not_used.filter((site) => holdsOn(site, day));
}

/** The sites that are over. */
export function sitesPast({ sites_not_used = [] }: Patient, day: number): SiteNotUsed[] {
  return sites_not_used.filter((site) => !holdsOn(site, day));
}

/** A limb that is missing grows no end. */
export function isForGood({ why }: Pick<SiteNotUsed, "why">): boolean {
  return why === "missing";
}

function isSame(one: SiteNotUsed, other: SiteNotUsed): boolean {
  return one.site === other.site && one.side === other.side && one.why === other.why && one.until_day === other.until_day;
}

/**
 * All sites with a new one, which takes the place of one in force for the same place and reason. Where the letter is full the
 * longest past goes first. undefined when even then there is no room: that many sites in force leave nothing to measure on.
 */
export function withSite(patient: Patient, added: SiteNotUsed, day: number): SiteNotUsed[] | undefined {
  const { sites_not_used: all = [] } = patient;
  const isReplaced = (one: SiteNotUsed): boolean =>
    holdsOn(one, day) && one.site === added.site && one.side === added.side && one.why === added.why;
  const kept = all.filter((one) => !isReplaced(one));
  const past = sitesPast(patient, day).sort((one, other) => (one.until_day ?? 0) - (other.until_day ?? 0));
  while (kept.length >= MOST) {
    const oldest = past.shift();
    if (!oldest) return undefined;
    kept.splice(kept.findIndex((one) => isSame(one, oldest)), 1);
  }
  return [...kept, added];
}

/** All sites with this one over since yesterday; one that was for good was told by mistake and goes altogether. */
export function withoutSite({ sites_not_used = [] }: Patient, gone: SiteNotUsed, day: number): SiteNotUsed[] {
  const at = sites_not_used.findIndex((one) => isSame(one, gone));
  const ended = { ...gone, until_day: day - 1 };
  return sites_not_used.flatMap((one, index) => (index !== at ? [one] : isForGood(one) ? [] : [ended]));
}
