/*
 * Writes the list of files to keep on the phone, each with its hash, into dist/sw.js.
 * The worker itself is not in it, and neither are compressed copies: the server chooses those.
 */
import { injectManifest } from "workbox-build";

/** Only files Vite named by their content; one that merely looks like it, such as icon-maskable.svg, needs a hash. */
const HASHED = /^assets\/.+-[\w-]{8}\.\w+$/;
const LARGEST_BYTES = 500_000;

/** Fails when a file of the app does not get onto the list: it would be missing without a network. */
export async function writePrecache(dist) {
  const { count, size, warnings } = await injectManifest({
    swSrc: `${dist}/sw.js`,
    swDest: `${dist}/sw.js`,
    globDirectory: dist,
    globPatterns: ["**/*.{html,js,css,svg,png,woff2,webmanifest}"],
    globIgnores: ["sw.js"],
    dontCacheBustURLsMatching: HASHED,
    maximumFileSizeToCacheInBytes: LARGEST_BYTES,
  });
  if (warnings.length > 0) throw new Error(warnings.join("\n"));
  console.log(`precache: ${count} files, ${size} bytes`);
}
