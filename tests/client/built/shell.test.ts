/*
 * The built client: budgets of what goes over the air, nothing inline (Content Security Policy Level 3: without
 * 'unsafe-inline' inline scripts and styles are refused), and everything the page needs on the list kept on the phone.
 * It reads client/dist and fails when that is not built.
 */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { beforeAll, describe, expect, test } from "vitest";
import { filesBelow } from "../../../client/build/compress.mjs";
import {
  FIRST_ROUTE_JS_LIMIT_BYTES,
  PRECACHE_LIMIT_BYTES,
  firstRouteScripts,
  precachedFiles,
  sizesOf,
} from "../../../client/build/sizes.mjs";

const dist = fileURLToPath(new URL("../../../client/dist", import.meta.url));
const read = (file: string): string => readFileSync(`${dist}/${file}`, "utf8");
/** Names, no addresses: XML namespaces, JSON Schema's dialect, .invalid (RFC 2606), and a link in Workbox's error text. */
const NAMES_ONLY = new Set(["www.w3.org", "json-schema.org", "quietcuff.invalid", "bit.ly"]);
const isCopy = (file: string): boolean => /\.(br|gz)$/.test(file);

beforeAll(() => {
  if (!existsSync(`${dist}/sw.js`)) throw new Error("client/dist is not built: npm run build");
});

describe("budgets (project: first route 60 KiB of JavaScript by gzip, all that is kept 300 KiB as sent)", () => {
  test("the limits are the ones agreed", () => {
    expect([FIRST_ROUTE_JS_LIMIT_BYTES, PRECACHE_LIMIT_BYTES]).toEqual([61440, 307200]);
  });
  test("are kept", () => {
    const { firstRouteJs, precache, files } = sizesOf(dist);
    expect(files).toBeGreaterThan(3);
    expect(firstRouteJs).toBeGreaterThan(5000);
    expect(firstRouteJs).toBeLessThanOrEqual(FIRST_ROUTE_JS_LIMIT_BYTES);
    expect(precache).toBeGreaterThan(firstRouteJs);
    expect(precache).toBeLessThanOrEqual(PRECACHE_LIMIT_BYTES);
  });
});

describe("the page", () => {
  test("holds no script or style of its own, and no handler", () => {
    const html = read("index.html");
    expect(html).toMatch(/<script [^>]*src=/);
    expect(html).not.toMatch(/<script(?![^>]*\ssrc=)/);
    expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
  });
  test("loads scripts that are there, with their content in their name; only the look, known before the first paint, has none", () => {
    const [look, ...bundled] = firstRouteScripts(dist);
    expect(look).toBe("look.js");
    expect(existsSync(`${dist}/look.js`)).toBe(true);
    expect(bundled.length).toBeGreaterThan(0);
    for (const file of bundled) {
      expect(file).toMatch(/^assets\/.+-[\w-]{8}\.js$/);
      expect(existsSync(`${dist}/${file}`)).toBe(true);
    }
  });
  test("names no other origin: nothing is fetched from a third party", () => {
    const named = filesBelow(dist)
      .filter((file) => /\.(html|js|css|svg|webmanifest)$/.test(file))
      .flatMap((file) => [...read(file).matchAll(/https?:\/\/([^"'`)\s/]+)/g)].map(([, host]) => host as string));
    expect([...new Set(named)].filter((host) => !NAMES_ONLY.has(host))).toEqual([]);
    expect(named).toContain("www.w3.org"); // the search does find what is there
  });
});

describe("what is kept on the phone", () => {
  test("is every file of the app but the worker itself and what only robots read", () => {
    const needed = filesBelow(dist).filter((file) => !isCopy(file) && file !== "sw.js" && file !== "robots.txt");
    expect([...precachedFiles(dist)].sort()).toEqual(needed);
  });
  test("has a hash for each file whose name does not carry one", () => {
    const worker = read("sw.js");
    const listed = [...worker.matchAll(/\{"revision":(null|"[0-9a-f]{32}"),"url":"([^"]+)"\}/g)];
    expect(listed.length).toBe(precachedFiles(dist).length);
    for (const [, revision, file] of listed) {
      expect([file, revision === "null"]).toEqual([file, /^assets\/.+-[\w-]{8}\.\w+$/.test(file)]);
    }
  });
});

test("each file of 1 kB or more has compressed copies of exactly its bytes", () => {
  const files = filesBelow(dist).filter((file) => /\.(html|js|css|svg|webmanifest)$/.test(file));
  const large = files.filter((file) => readFileSync(`${dist}/${file}`).length >= 1000);
  expect(large.length).toBeGreaterThan(2);
  for (const file of large) {
    const bytes = readFileSync(`${dist}/${file}`);
    expect([file, gunzipSync(readFileSync(`${dist}/${file}.gz`)).equals(bytes)]).toEqual([file, true]);
    expect([file, brotliDecompressSync(readFileSync(`${dist}/${file}.br`)).equals(bytes)]).toEqual([file, true]);
  }
});
