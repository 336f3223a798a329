/* The drawings: none missing, none twice, no colour of their own, states told by shape, places that a thumb can tell apart. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { JSX } from "preact";
import { describe, expect, it } from "vitest";
import { Body, SITE_PLACES, SITES } from "../../../client/src/parts/drawings/body.tsx";
import { CuffDrawing, TapeDrawing } from "../../../client/src/parts/drawings/cuff.tsx";
import { Icon, ICON_NAMES } from "../../../client/src/parts/drawings/icons.tsx";
import { LevelDrawing, LEVELS } from "../../../client/src/parts/drawings/level.tsx";
import { PostureDrawing, POSTURES } from "../../../client/src/parts/drawings/posture.tsx";
import { RestraintDrawing } from "../../../client/src/parts/drawings/restraint.tsx";
import { SiteDrawing } from "../../../client/src/parts/drawings/site.tsx";
import { markup } from "./markup.ts";

const FOLDER = fileURLToPath(new URL("../../../client/src/parts/drawings/", import.meta.url));
const WIRE = new URL("../../../shared_schemas/wire/measurement.1.json", import.meta.url);
const SPECIES = ["dog", "cat"] as const;
const BUDGET_BYTES = 12_000;

const sources = readdirSync(FOLDER).map((name) => ({ name, text: readFileSync(FOLDER + name, "utf8") }));

/** Name and drawing of everything that is drawn. */
function everything(): [string, JSX.Element][] {
  const ofSpecies = SPECIES.flatMap((species): [string, JSX.Element][] => [
    [`${species}`, <Body species={species} marks={[]} />],
    ...SITES.map((site): [string, JSX.Element] => [`${species} ${site}`, <SiteDrawing species={species} site={site} />]),
    ...POSTURES.map((posture): [string, JSX.Element] => [`${species} ${posture}`, <PostureDrawing species={species} posture={posture} />]),
    ...LEVELS.map((level): [string, JSX.Element] => [`${species} ${level}`, <LevelDrawing species={species} level={level} />]),
    [`${species} towel`, <RestraintDrawing species={species} kind="towel" />],
    [`${species} basket`, <RestraintDrawing species={species} kind="basket" />],
  ]);
  const icons = ICON_NAMES.map((name): [string, JSX.Element] => [`icon ${name}`, <Icon name={name} />]);
  return [...ofSpecies, ...icons, ["tape", <TapeDrawing />], ["cuff", <CuffDrawing share_permille={400} />]];
}

/** The words of one list in the wire schema, wherever it stands. */
function wireWords(key: string): string[] {
  const found = new RegExp(`"${key}": \\{\\s*"type": "string",\\s*"enum": \\[([^\\]]*)\\]`).exec(readFileSync(WIRE, "utf8"));
  return JSON.parse(`[${found?.[1]}]`) as string[];
}

describe("every drawing", () => {
  it("is there for each site and posture that can travel", () => {
    expect([...SITES].sort()).toEqual(wireWords("site").sort());
    expect([...POSTURES].sort()).toEqual(wireWords("posture").sort());
  });
  it.each(everything())("%s: has lines, a fixed frame, no colour of its own, and is passed over when it has no label", (_name, drawing) => {
    const drawn = markup(drawing);
    expect(drawn).toMatch(/<(path|rect|circle)/);
    expect(drawn).toMatch(/viewBox="0 0 \d+ \d+"/);
    expect(drawn).toContain('aria-hidden="true"');
    expect(drawn).not.toMatch(/ (fill|stroke|color|style)="/);
    expect(drawn).not.toMatch(/NaN|undefined|\[object/);
  });
  it("differs from every other", () => {
    const seen = new Map<string, string>();
    for (const [name, drawing] of everything()) {
      // the full sun and the plain one differ in what is filled, left and right hand in how they are turned
      const drawn = markup(drawing);
      expect(seen.get(drawn), name).toBeUndefined();
      seen.set(drawn, name);
    }
    expect(seen.size).toBe(everything().length);
  });
  it("is heard by its label when it has one", () => {
    const drawn = markup(<PostureDrawing species="cat" posture="in_lap" label="In the lap" />);
    expect(drawn).toContain('role="img" aria-label="In the lap"');
    expect(drawn).not.toContain("aria-hidden");
  });
});

describe("the sources", () => {
  it.each(sources)("$name names no colour", ({ text }) => {
    expect(text).not.toMatch(/#[0-9a-f]{3,8}\b|\b(rgb|hsl|oklch|oklab|lab|lch|color)\(/i);
    expect(text).not.toMatch(/(fill|stroke)=|\b(red|green|black|white|gr[ae]y)\b/i);
  });
  it("are small enough to be on every phone, before anything is taken out of them", () => {
    expect(gzipSync(sources.map(({ text }) => text).join("\n"), { level: 9 }).length).toBeLessThanOrEqual(BUDGET_BYTES);
  });
});

describe("marks on the body", () => {
  const bare = (species: "dog" | "cat"): string => markup(<Body species={species} marks={[]} />);
  const count = (text: string, part: string): number => text.split(part).length - 1;
  it.each(SPECIES)("%s: each state has its own shape", (species) => {
    for (const site of SITES) {
      const drawn = (state: "off" | "now" | "last"): string => markup(<Body species={species} marks={[{ site, side: "right", state }]} />);
      expect(count(drawn("now"), '<rect class="solid"')).toBe(1);
      expect(count(drawn("last"), '<rect class="skin"')).toBe(1);
      expect(count(drawn("off"), '<path class="off"')).toBe(1);
      expect(count(bare(species), "<rect") + count(bare(species), 'class="off"')).toBe(0);
    }
  });
  it("left and right of a limb are two places, and are lettered", () => {
    const of = (side: "left" | "right"): string => markup(<Body species="dog" marks={[{ site: "forearm", side, state: "now" }]} />);
    expect(of("left")).not.toBe(of("right"));
    expect([...bare("dog").matchAll(/<text[^>]*>([^<]+)</g)].map(([, letter]) => letter)).toEqual(["R", "L", "R", "L"]);
  });
});

describe("places for buttons", () => {
  /** Width of the phone, of which an edge of 12 on each side is not the drawing's; and how far apart two targets of 44 must lie on it. */
  const PHONES = [{ phone_px: 320, least_px: 44 + 8 }, { phone_px: 360, least_px: 44 + 8 }];
  /** Height to width of the body's drawing. */
  const shape = (): number => {
    const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(markup(<Body species="dog" marks={[]} />)) as unknown as [string, string, string];
    return Number(height) / Number(width);
  };
  it.each(SPECIES)("%s: one for each side of each limb and one for the tail, inside the drawing", (species) => {
    const places = SITE_PLACES[species];
    const names = places.map(({ site, side }) => `${site} ${side ?? "-"}`);
    const wanted = SITES.flatMap((site) => (site === "tail_base" ? ["tail_base -"] : [`${site} left`, `${site} right`]));
    expect(names.sort()).toEqual(wanted.sort());
    for (const { x, y } of places) expect(Math.min(x, y, 1000 - x, 1000 - y)).toBeGreaterThan(40);
  });
  const pairs = SPECIES.flatMap((species) =>
    SITE_PLACES[species].flatMap((one, at) => SITE_PLACES[species].slice(at + 1).map((other) => ({ species, one, other }))),
  );
  it.each(PHONES)("on $phone_px pixels any two are $least_px apart or more", ({ phone_px, least_px }) => {
    expect(pairs.length).toBe(2 * 36);
    for (const { species, one, other } of pairs) {
      const apart_px = Math.max(Math.abs(one.x - other.x), Math.abs(one.y - other.y) * shape()) * ((phone_px - 24) / 1000);
      expect(apart_px, `${species}: ${one.site} ${one.side}, ${other.site} ${other.side}`).toBeGreaterThanOrEqual(least_px);
    }
  });
});

describe("the cuff", () => {
  it.each([200, 350, 400, 600])("at %i ‰ is drawn to scale: its width against the circumference of the limb it lies on", (share_permille) => {
    const drawn = markup(<CuffDrawing share_permille={share_permille} />);
    const [, across, height] = /<rect class="solid"[^>]*width="([\d.]+)" height="([\d.]+)"/.exec(drawn) as unknown as [string, string, string];
    const [, radius] = /<ellipse[^>]*rx="([\d.]+)"/.exec(drawn) as unknown as [string, string];
    expect(Number(across)).toBeGreaterThanOrEqual(2 * Number(radius));
    expect(Number(height) / (2 * Math.PI * Number(radius))).toBeCloseTo(share_permille / 1000, 6);
  });
});
