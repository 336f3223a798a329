/*
 * The guides and the glossary: words for every step, species and method, short, with the rules' own figures.
 * The shares of a cuff are held against the consensus statement (Acierno et al., J Vet Intern Med 2018;32:1803-1822, from memory).
 */
import { readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { GUIDE_STEPS, guideIds, guideSentences } from "../../../client/src/parts/guide_card.ts";
import { Glossary } from "../../../client/src/parts/glossary.tsx";
import { Guide } from "../../../client/src/parts/guide.tsx";
import { markup } from "./markup.ts";

const file = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const words = readFileSync(file("shared_schemas/words/en_guide.ftl"), "utf8");
const ids = [...words.matchAll(/^([a-z][\w-]*) =/gm)].map(([, id]) => id as string);

const SPECIES = ["dog", "cat"] as const;
const METHODS = ["doppler", "oscillometric"] as const;
const MOST_SENTENCES = 6;
const cards = GUIDE_STEPS.flatMap((step) => SPECIES.flatMap((species) => METHODS.map((method) => ({ step, species, method }))));

describe("a card", () => {
  it.each(cards)("$step, $species, $method: one to six short sentences, every figure filled in", ({ step, species, method }) => {
    const sentences = guideSentences(step, species, method);
    expect(sentences.length).toBeGreaterThanOrEqual(3);
    expect(sentences.length).toBeLessThanOrEqual(MOST_SENTENCES);
    for (const sentence of sentences) {
      expect(sentence).toMatch(/^[A-Z][^{}[\]]*\.$/);
      expect(sentence.slice(0, -1)).not.toMatch(/[.!?] [A-Z]/);
      expect(sentence.split(" ").length).toBeLessThanOrEqual(26);
    }
  });
  it.each(cards)("$step, $species, $method: is folded under its title and shows its sentences", (card) => {
    const drawn = markup(<Guide {...card} />);
    expect(drawn).toMatch(/^<details class="more guide"><summary>How to: /);
    for (const sentence of guideSentences(card.step, card.species, card.method)) expect(drawn).toContain(sentence);
    expect(drawn).not.toMatch(/\[[a-z-]+\]|\{\$/);
  });
  it("says what holds for both methods while none is known", () => {
    expect(guideSentences("readings", "dog")).not.toContain(guideSentences("readings", "dog", "doppler").at(-1));
  });
  it("differs by species for the cuff and by method for the readings", () => {
    expect(guideSentences("cuff", "dog")).not.toEqual(guideSentences("cuff", "cat"));
    expect(guideSentences("readings", "dog", "doppler")).not.toEqual(guideSentences("readings", "dog", "oscillometric"));
  });
});

describe("figures", () => {
  it("the cuff is 30 to 40 % of the circumference for a cat and 40 % for a dog", () => {
    expect(guideSentences("cuff", "cat").join(" ")).toMatch(/30\s?% to 40\s?%/);
    expect(guideSentences("cuff", "dog").join(" ")).toMatch(/aim at a cuff width of 40\s?%/);
  });
  it("five to seven readings that agree", () => {
    expect(guideSentences("readings", "cat").join(" ")).toContain("take 5 to 7");
  });
});

describe("drawings", () => {
  const pictures = (step: (typeof GUIDE_STEPS)[number]): number =>
    markup(<Guide step={step} species="cat" method="doppler" />).split("<figure").length - 1;
  it("stand where they say more than words", () => {
    expect(Object.fromEntries(GUIDE_STEPS.map((step) => [step, pictures(step)]))).toEqual({
      ready: 0, calm: 2, cuff: 4, site: 5, posture: 5, level: 3, readings: 1, result: 0,
    });
  });
  it("show the chosen site and posture alone, and no probe for a machine", () => {
    const drawn = markup(<Guide step="site" species="dog" method="oscillometric" site="tail_base" />);
    expect(drawn.split("<figure").length - 1).toBe(1);
    expect(drawn).toContain("Tail base");
    expect(drawn.length).toBeLessThan(markup(<Guide step="site" species="dog" method="doppler" site="tail_base" />).length);
  });
});

describe("the words", () => {
  it("are all used", () => {
    const inCards = new Set(cards.flatMap(({ step, species, method }) => guideIds(step, species, method)));
    const sources = ["parts/guide.tsx", "parts/glossary.tsx"].map((path) => readFileSync(file(`client/src/${path}`), "utf8")).join("");
    const shown = markup(cards.map((card) => <Guide {...card} />)) + markup(<Glossary species="cat" />);
    const sentence = (id: string): string => new RegExp(`^${id} = (.*)$`, "m").exec(words)?.[1] as string;
    expect(ids.length).toBeGreaterThan(80);
    expect(ids.filter((id) => !inCards.has(id) && !shown.includes(sentence(id)))).toEqual([]);
    expect(sources).not.toContain("innerHTML");
  });
  it("of the glossary are all there", () => {
    const drawn = markup(<Glossary species="dog" />);
    expect(drawn.split("<dt>").length - 1).toBe(20);
    expect(drawn).not.toMatch(/\[[a-z-]+\]/);
  });
});

/** Files that a file takes in before it runs, itself included; what is only imported later does not count. */
function takenInBy(path: string, seen = new Set<string>()): Set<string> {
  if (seen.has(path)) return seen;
  seen.add(path);
  for (const [, type, module] of readFileSync(path, "utf8").matchAll(/^import (type )?(?:[^;]*? from )?"(\.[^"]+)";/gms)) {
    const target = [module, `${module}.ts`, `${module}.tsx`].map((name) => resolve(dirname(path), name as string));
    const found = target.find((name) => /\.tsx?$/.test(name) && isThere(name));
    if (!type && found) takenInBy(found, seen);
  }
  return seen;
}

function isThere(path: string): boolean {
  try {
    readFileSync(path);
    return true;
  } catch {
    return false;
  }
}

describe("the first route", () => {
  const reached = [...takenInBy(file("client/src/main.tsx"))].map((path) => path.split("/client/src/")[1]);
  it("is followed through its screens", () => {
    expect(reached).toContain("screens/round/round.tsx");
    expect(reached).not.toContain("screens/measure/measure.tsx");
  });
  it("takes in no words of the guides and no drawing of an animal", () => {
    expect(reached.filter((name) => /guide|glossary|drawings\/(?!icons|drawing\.)/.test(name ?? ""))).toEqual([]);
  });
});
