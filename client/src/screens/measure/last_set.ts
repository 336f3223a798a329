/* What "as last time" would take over today, and what differs: a cuff or an instrument that is not in this bag, a site that is
   not to be used now. What differs is said and left open, never taken over in silence. Pure; must not touch readings. */
import type { Bag1 as Bag } from "../../contract/wire_types";
import { gaugeNames, instrumentsOf, widthsOf } from "./carried";
import { LIMB_OLD_DAYS } from "./limb_ranges";
import { limbFrom, limbText } from "./limb_from";
import { inSetNow, setNow, without, type CuffSet, type LastSet, type LimbFrom, type Open, type Saying } from "./open";
import { dayOf, type SiteNotUsed } from "../animal/sites_not_used";
import { barredPlace } from "./sites";
import { done, type Patch } from "./undo";

export type Taken = LastSet & Partial<Pick<CuffSet, "method">>;

/** While it is put together. */
type Taking = { -readonly [Key in keyof Taken]: Taken[Key] };

/** What is known today that may differ from last time. */
export interface Today {
  /** The bag in use; absent when there is none: then nothing can be missing in it. */
  bag?: Bag | undefined;
  /** Sites not to be used that are in force today. */
  barred: readonly SiteNotUsed[];
}

export interface AsLast {
  take: Taken;
  differs: Saying[];
}

/** What can be taken over today; undefined when there was no last time. */
export function asLast(open: Open, today: Today): AsLast | undefined {
  const { last } = open;
  if (!last) return undefined;
  const take: Taking = { ...(hasReadings(open) ? {} : methodThen(open)), ...last };
  const differs = [differingSite(take, today), differingCuff(take, today), ...differingThings(open, take, today)].filter((one) => one !== undefined);
  return { take, differs };
}

function hasReadings(open: Open): boolean {
  return setNow(open).readings.length > 0;
}

function methodThen({ last_of, measurement }: Open): Pick<Taken, "method"> {
  const method = last_of?.method ?? measurement.previous?.method; // a draft of an earlier build knows only the latest visit
  return method ? { method } : {};
}

/** Takes the site out of what is taken over where it is not to be used now, and says so. */
function differingSite(take: Taking, { barred }: Today): Saying | undefined {
  const why = barredPlace(barred, take);
  if (!why || !take.site) return undefined;
  const facts = { site: take.site, side: take.side ?? "", why: why.why };
  delete take.site;
  delete take.side;
  return { word: "differs-site", facts };
}

function differingCuff(take: Taking, { bag }: Today): Saying | undefined {
  const widths = widthsOf(bag);
  const mm = take.cuff_width_mm;
  if (mm === undefined || widths.length === 0 || widths.some(({ width_mm }) => width_mm === mm)) return undefined;
  delete take.cuff_width_mm;
  return { word: "differs-cuff", facts: { mm: String(mm) } };
}

function differingThings(open: Open, take: Taking, { bag }: Today): (Saying | undefined)[] {
  const things = instrumentsOf(bag, take.method ?? setNow(open).method);
  const said: Saying[] = [];
  if (take.instrument !== undefined && things.length > 0 && !things.some(({ name }) => name === take.instrument)) {
    said.push({ word: "differs-instrument", facts: { name: take.instrument } });
    delete take.instrument;
  }
  if (take.gauge && (bag?.gauges?.length ?? 0) > 0 && gaugeNames(bag, take.gauge).length === 0) {
    said.push({ word: "differs-gauge", facts: { gauge: take.gauge } });
    delete take.gauge;
  }
  return said;
}

/** The day the limb in the set now was measured, where it was taken over from a last visit; whether that is long ago. Undefined when measured today. */
export function limbOfLast(open: Open): { day: number; isOld: boolean } | undefined {
  const from = limbFrom(open);
  const days_ago = from && today(open) - from.day;
  return from && days_ago ? { day: from.day, isOld: days_ago > LIMB_OLD_DAYS } : undefined;
}

/** The day this visit began, by the calendar. */
function today({ measurement }: Open): number {
  return dayOf(measurement.started_at_ms ?? 0);
}

/** Whose last visit it is that is taken over, and of which day. */
function fromLast(open: Open): LimbFrom {
  const { patient = "", previous } = open.measurement;
  return { patient, name: open.name ?? "", day: open.last_of?.day ?? today(open) - (previous?.days_ago ?? 0) };
}

/** The set now with everything that is taken over from the last one, as one act. */
export function takenFromLast(open: Open, take: Taken): Open {
  const { limb_circumference_mm: limb, instrument, cuff_width_mm: width } = take;
  const patches: Patch[] = Object.entries(take).map(([key, to]) => ({ at: inSetNow(open, key), to }));
  const texts: Record<string, string> = {
    ...(limb === undefined ? {} : { circumference: limbText(limb), circumference_unit: "mm" }),
    ...(instrument === undefined ? {} : { instrument }),
    ...(width === undefined ? {} : { width: "", width_other: "" }),
  };
  const typed: Patch[] = Object.entries(texts).map(([key, to]) => ({ at: ["texts", key], to }));
  const from: Patch[] = limb === undefined ? [] : [{ at: ["limb_from", String(open.measurement.sets.length - 1)], to: fromLast(open) }];
  return done(without(open), "act-choice", { field: "as-last-time-act" }, [...patches, ...typed, ...from]);
}
