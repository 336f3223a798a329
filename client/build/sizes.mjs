/*
 * How much goes over the air before the app can be used, and is that within its budget?
 * Read from the built files alone, so that the build and a test can ask the same question.
 */
import { existsSync, readFileSync, statSync } from "node:fs";
import { gzipSync } from "node:zlib";

export const FIRST_ROUTE_JS_LIMIT_BYTES = 60 * 1024;
export const PRECACHE_LIMIT_BYTES = 300 * 1024;

const LISTED = /["']?url["']?:\s*["'`]([^"'`]+)["'`]/g;

/** Scripts the page loads before it shows anything, with everything they import statically. */
export function firstRouteScripts(dist) {
  const html = readFileSync(`${dist}/index.html`, "utf8");
  return [...html.matchAll(/(?:src|href)="\/([^"]+\.js)"/g)].map(([, file]) => file);
}

/** Files of the precache list as it stands in the built worker. */
export function precachedFiles(dist) {
  const worker = readFileSync(`${dist}/sw.js`, "utf8");
  return [...worker.matchAll(LISTED)].map(([, file]) => file);
}

/** Bytes as sent: the brotli copy where there is one, as every browser that runs the app takes it. */
function sentBytes(dist, file) {
  const compressed = `${dist}/${file}.br`;
  return statSync(existsSync(compressed) ? compressed : `${dist}/${file}`).size;
}

/** JavaScript of the first route by gzip, and the whole precache as sent, in bytes. */
export function sizesOf(dist) {
  const scripts = firstRouteScripts(dist).map((file) => gzipSync(readFileSync(`${dist}/${file}`), { level: 9 }).length);
  const listed = precachedFiles(dist).map((file) => sentBytes(dist, file));
  const sum = (values) => values.reduce((total, value) => total + value, 0);
  return { firstRouteJs: sum(scripts), precache: sum(listed), files: listed.length };
}

/** A line with the sizes; raises when one is over its budget, or when there is nothing to measure. */
export function requireSmall(dist) {
  const { firstRouteJs, precache, files } = sizesOf(dist);
  if (firstRouteJs === 0 || files === 0) throw new Error("no script in the page, or an empty precache list");
  if (firstRouteJs > FIRST_ROUTE_JS_LIMIT_BYTES) throw new Error(`first route: ${firstRouteJs} bytes of JavaScript`);
  if (precache > PRECACHE_LIMIT_BYTES) throw new Error(`precache: ${precache} bytes`);
  return `sizes: first route ${firstRouteJs} bytes of JavaScript (gzip), precache ${precache} bytes in ${files} files`;
}
