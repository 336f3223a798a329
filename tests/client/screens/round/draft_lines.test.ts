/** What tells two measurements apart that are not filed yet. */
import { expect, it } from "vitest";
import type { Draft } from "../../../../client/src/offline/phone_types.ts";
import { draftLines } from "../../../../client/src/screens/round/draft_lines.ts";

const NOON_MS = new Date(2026, 10, 25, 12, 0, 0).getTime();

function draft(id: string, begun_ms: number, more: { set?: object; name?: string; mark?: string; species?: string } = {}): Draft {
  const { set = {}, species = "cat", ...who } = more;
  const measurement = { species, started_at_ms: begun_ms, sets: [{ method: "doppler", readings: [], ...set }] };
  return { id, updatedMs: begun_ms, content: { id, part: "calm", measurement, ...who } };
}

const abouts = (...drafts: Draft[]): string[] => draftLines(drafts, NOON_MS + 60_000).map(({ line, about }) => `${line} ${about}`);

it("names animal, cuff and when it was begun, without seconds where they are not needed", () => {
  const [one] = abouts(draft("a", NOON_MS, { name: "Mira", mark: "kennel 7", set: { site: "forearm", side: "left", cuff_width_mm: 30, readings: [{}, {}] } }));
  expect(one).toMatch(/^Mira: .?2.? readings Cat · kennel 7 · Forearm · Left · 30 mm cuff · begun .*12.00/u);
  expect(one).not.toMatch(/12.00.00/);
});

it("tells two of the same minute apart by their seconds, and leaves a third as it is", () => {
  const [one, two, three] = abouts(draft("a", NOON_MS + 4000), draft("b", NOON_MS + 9000), draft("c", NOON_MS, { species: "dog" }));
  expect([/12.00.04/.test(String(one)), /12.00.09/.test(String(two)), /12.00.00/.test(String(three))]).toEqual([true, true, false]);
});

it("needs no seconds where the cuff or the readings tell them apart", () => {
  const all = abouts(draft("a", NOON_MS + 4000, { set: { site: "tail_base" } }), draft("b", NOON_MS + 9000, { set: { readings: [{}] } }), draft("c", NOON_MS));
  expect(all.filter((one) => /12.00.0/.test(one))).toEqual([]);
  expect(new Set(all).size).toBe(3);
});

it("says the day of one that was begun on another, and keeps two of it apart as well", () => {
  const day_ms = 24 * 3_600_000;
  const [old, two, other] = abouts(draft("a", NOON_MS - day_ms), draft("b", NOON_MS), draft("c", NOON_MS - day_ms + 5000));
  expect(old).not.toBe(two);
  expect(old).toMatch(/2026.*12.00.00/);
  expect(other).toMatch(/2026.*12.00.05/);
  expect([old, other].map((one) => String(one).match(/12.00/g)?.length)).toEqual([1, 1]); // the time once
});
