/*
 * The manifest and the icons it names, read from client/public as they are shipped.
 * Sources: W3C Web Application Manifest (members, `purpose`; "Icon masks and safe zone": a circle whose radius is 2/5 of the
 * smaller side), PNG specification (IHDR), Web App Launch Handler (WICG: `client_mode`). 180 pixels for a touch icon: common practice.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type Picture, readPng } from "./png.ts";

const file = (path: string): string => fileURLToPath(new URL(`../../client/${path}`, import.meta.url));
const text = (path: string): string => readFileSync(file(path), "utf8");
const manifest = JSON.parse(text("public/manifest.webmanifest")) as Record<string, unknown>;
const page = text("index.html");

interface Icon {
  readonly src: string;
  readonly sizes: string;
  readonly type: string;
  readonly purpose: string;
}

const icons = manifest["icons"] as Icon[];
const pngs = icons.filter(({ type }) => type === "image/png");

/** A colour of the look a phone starts in, as tokens.css names it. */
function token(name: string): string | undefined {
  return new RegExp(`data-look="day"\\] \\{[^}]*--${name}: (#[0-9a-f]{6})`).exec(text("src/look/tokens.css"))?.[1];
}

describe("members", () => {
  it("has an identity that does not move with the start address", () => {
    expect(manifest["id"]).toBe("/");
    expect(manifest["scope"]).toBe("/");
    expect(manifest["start_url"]).toBe("/?from=home");
    expect(new URL(manifest["start_url"] as string, "https://x.test").pathname).toBe("/"); // within the scope
  });
  it("is called by a name that fits under an icon", () => {
    expect(manifest["name"]).toBe("quietcuff");
    expect((manifest["short_name"] as string).length).toBeLessThanOrEqual(12);
  });
  it("stands alone, in either direction the phone is held", () => {
    expect([manifest["display"], manifest["lang"], manifest["dir"]]).toEqual(["standalone", "en", "ltr"]);
    expect(manifest).not.toHaveProperty("orientation");
  });
  it("takes its colours from the tokens, and so does the page", () => {
    expect(token("ground")).toMatch(/^#/);
    expect([manifest["theme_color"], manifest["background_color"]]).toEqual([token("ground"), token("ground")]);
    expect(page).toContain(`<meta name="theme-color" content="${token("ground")}"`);
  });
  it("offers the round and the outbox, both within the scope, and brings an open window to the front", () => {
    const shortcuts = manifest["shortcuts"] as { name: string; url: string }[];
    expect(shortcuts.map(({ name, url }) => [name, url])).toEqual([
      ["Round", "/?from=shortcut#/round"],
      ["Outbox", "/?from=shortcut#/outbox"],
    ]);
    expect(manifest["launch_handler"]).toEqual({ client_mode: "focus-existing" });
  });
});

describe("icons", () => {
  it("are there for any use and for masks, in 192 and 512", () => {
    const named = pngs.map(({ purpose, sizes }) => `${purpose} ${sizes}`).sort();
    expect(named).toEqual(["any 192x192", "any 512x512", "maskable 192x192", "maskable 512x512"]);
  });
  it.each(pngs)("$src has the pixels it says", ({ src, sizes }) => {
    const { width, height } = readPng(readFileSync(file(`public${src}`)));
    expect(`${width}x${height}`).toBe(sizes);
  });
  it.each(pngs.filter(({ purpose }) => purpose === "maskable"))("$src: all that is drawn lies in the safe zone", ({ src }) => {
    const picture = readPng(readFileSync(file(`public${src}`)));
    expect(isOpaque(picture)).toBe(true);
    expect(farthest(picture)).toBeGreaterThan(0.1);
    expect(farthest(picture)).toBeLessThanOrEqual(0.4);
  });
  it("the measure of the safe zone sees a picture that fills its square", () => {
    expect(farthest(readPng(readFileSync(file("public/icon-512.png"))))).toBeGreaterThan(0.4);
  });
  it("has one for a home screen that takes it from the page: 180 pixels, opaque", () => {
    const [, src] = /<link rel="apple-touch-icon" href="([^"]+)"/.exec(page) ?? [];
    const picture = readPng(readFileSync(file(`public${src}`)));
    expect([picture.width, picture.height, isOpaque(picture)]).toEqual([180, 180, true]);
  });
});

function isOpaque({ width, height, at }: Picture): boolean {
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) if (at(x, y)[3] !== 255) return false;
  return true;
}

/** How far from the centre anything unlike the ground is drawn, as a part of the width. The ground is the pixel amid the top edge. */
function farthest({ width, height, at }: Picture): number {
  const ground = at(Math.floor(width / 2), 0);
  let most = 0;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const differs = at(x, y).some((value, channel) => Math.abs(value - (ground[channel] as number)) > 8);
      if (differs) most = Math.max(most, Math.hypot(x + 0.5 - width / 2, y + 0.5 - height / 2) / width);
    }
  }
  return most;
}
