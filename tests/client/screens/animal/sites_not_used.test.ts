/** Sites in force on a day: the last day counts, a missing limb has no end, and what is over is kept. Days worked out by hand. */
import { describe, expect, it } from "vitest";
import type { Patient1 as Patient } from "../../../../client/src/contract/wire_types.ts";
import { check } from "../../../../client/src/contract/wire.ts";
import {
  dayOf, sitesInForce, sitesPast, withoutSite, withSite, type SiteNotUsed,
} from "../../../../client/src/screens/animal/sites_not_used.ts";

const TODAY = 20_000;
const catheter: SiteNotUsed = { site: "forearm", side: "left", why: "catheter", until_day: TODAY };
const wound: SiteNotUsed = { site: "tail_base", why: "wound", until_day: TODAY - 1 };
const gone: SiteNotUsed = { site: "metatarsus", side: "right", why: "missing" };
const cat = (...sites_not_used: SiteNotUsed[]): Patient => ({ species: "cat", name: "Mo", sites_not_used });

describe("a day", () => {
  it("is the reader's own: 1970-01-02 begins at 22:00 UTC two hours east, and at 02:00 UTC two hours west", () => {
    const hour = 3_600_000;
    expect([dayOf(22 * hour - 1, 120), dayOf(22 * hour, 120)]).toEqual([0, 1]);
    expect([dayOf(26 * hour - 1, -120), dayOf(26 * hour, -120)]).toEqual([0, 1]);
  });
});

describe("sites", () => {
  it("hold on their last day and not after; without an end for good", () => {
    expect(sitesInForce(cat(catheter, wound, gone), TODAY)).toEqual([catheter, gone]);
    expect(sitesPast(cat(catheter, wound, gone), TODAY)).toEqual([wound]);
    expect(sitesInForce(cat(catheter, gone), TODAY + 1)).toEqual([gone]);
    expect(sitesInForce({ species: "dog", name: "Mo" }, TODAY)).toEqual([]);
  });

  it("told again for the same place and reason are one, with the new end; another reason stands beside it", () => {
    const longer = { ...catheter, until_day: TODAY + 3 };
    expect(withSite(cat(catheter, gone), longer, TODAY)).toEqual([gone, longer]);
    expect(withSite(cat(catheter), { ...catheter, why: "punctured" }, TODAY)).toHaveLength(2);
    expect(withSite(cat({ ...catheter, until_day: TODAY - 5 }), longer, TODAY)).toHaveLength(2); // the earlier one stays as past
  });

  it("make room for a new one by the longest past, and never by one in force", () => {
    const past = Array.from({ length: 11 }, (_, at) => ({ ...wound, until_day: TODAY - 20 + at }));
    const full = withSite(cat(...past, gone), catheter, TODAY);
    expect(full).toEqual([...past.slice(1), gone, catheter]);
    expect(check("patient.1", cat(...(full as SiteNotUsed[])))).toBeUndefined();
    const inForce = Array.from({ length: 12 }, (_, at) => ({ ...catheter, until_day: TODAY + at }));
    expect(withSite(cat(...inForce), gone, TODAY)).toBeUndefined();
  });

  it("that may be used again are over since yesterday and stay; one told missing by mistake goes", () => {
    expect(withoutSite(cat(catheter, gone), catheter, TODAY)).toEqual([{ ...catheter, until_day: TODAY - 1 }, gone]);
    expect(withoutSite(cat(catheter, gone), gone, TODAY)).toEqual([catheter]);
    expect(sitesInForce(cat(...withoutSite(cat(catheter), catheter, TODAY)), TODAY)).toEqual([]);
  });
});
