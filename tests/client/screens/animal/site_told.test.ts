/** A site not to be used, from what was chosen and typed: complete, or the questions that are still open. */
import { describe, expect, it } from "vitest";
import { siteOf } from "../../../../client/src/screens/animal/site_told.ts";

const told = (chosen: Record<string, string>, days?: string) =>
  siteOf({ form: true, about: "site/x", chosen, texts: days === undefined ? {} : { days } }, 20_000);
const asked = (...given: Parameters<typeof told>): string[] | undefined => {
  const answer = told(...given);
  return Array.isArray(answer) ? answer.map(({ field }) => field) : undefined;
};
const FOREARM = { site: "forearm", side: "left", why: "catheter" };

describe("a site", () => {
  it("holds until taken away, for so many days, or as many as were typed", () => {
    expect(told({ ...FOREARM, end: "open" })).toEqual({ site: "forearm", side: "left", why: "catheter" });
    expect(told({ ...FOREARM, end: "7" })).toEqual({ site: "forearm", side: "left", why: "catheter", until_day: 20_007 });
    expect(told({ ...FOREARM, end: "other" }, "10")).toMatchObject({ until_day: 20_010 });
  });

  it("of a missing limb has no end, whatever was chosen before; both sides is no side, and the tail has none", () => {
    expect(told({ ...FOREARM, why: "missing", end: "7" })).toEqual({ site: "forearm", side: "left", why: "missing" });
    expect(told({ ...FOREARM, side: "both", end: "open" })).toEqual({ site: "forearm", why: "catheter" });
    expect(told({ site: "tail_base", side: "left", why: "wound", end: "open" })).toEqual({ site: "tail_base", why: "wound" });
  });

  it("asks for what is missing and for days that can be read", () => {
    expect(asked({ end: "open" })).toEqual(["site", "why"]);
    expect(asked({ site: "forearm", end: "open" })).toEqual(["side", "why"]);
    for (const days of ["", "0", "-3", "soon", "99999", "2.5"]) expect(asked({ ...FOREARM, end: "other" }, days)).toEqual(["days"]);
  });
});
