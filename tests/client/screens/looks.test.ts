/*
 * Contrast of the three looks, from the tokens as they are shipped. Formula: relative luminance and contrast ratio of
 * WCAG 2.2 (definitions); limits: 7:1 for text (1.4.6), 3:1 for outlines (1.4.11), 10:1 for values is the project's own.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const css = readFileSync(new URL("../../../client/src/look/tokens.css", import.meta.url), "utf8");

function tokens(look: string): Record<string, string> {
  const block = css.split(`data-look="${look}"] {`)[1]?.split("}")[0] ?? "";
  return Object.fromEntries([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [name, colour]));
}

function luminance(colour: string): number {
  const part = (at: number): number => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5);
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

it("the formula gives 21:1 for black on white, as the standard says", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
});

describe.each(["day", "dim", "outdoor"])("%s", (look) => {
  const t = tokens(look) as Record<"ground" | "raised" | "ink" | "quiet" | "line" | "act" | "on-act", string>;

  it.each([
    ["ink", "ground", 10], ["ink", "raised", 10], ["quiet", "ground", 7], ["quiet", "raised", 7],
    ["act", "ground", 7], ["on-act", "act", 7], ["line", "ground", 3], ["line", "raised", 3],
  ] as const)("%s on %s is at least %i:1", (one, other, least) => {
    expect(contrast(t[one], t[other])).toBeGreaterThanOrEqual(least);
  });
});
