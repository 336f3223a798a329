/*
 * Writes a .br and a .gz beside every file of 1 kB or more, at the best level, so that the server compresses nothing
 * while it answers. Pictures are compressed already.
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const LEAST_BYTES = 1000;
const COMPRESSIBLE = /\.(html|js|css|svg|json|webmanifest|txt)$/;

/** All files of a folder, by their path below it. */
export function filesBelow(folder) {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`.slice(folder.length + 1))
    .sort();
}

/** Compresses what is there now; call it last, the copies must be of the final bytes. */
export function compress(folder) {
  for (const file of filesBelow(folder).filter((name) => COMPRESSIBLE.test(name))) {
    const bytes = readFileSync(`${folder}/${file}`);
    if (bytes.length < LEAST_BYTES) continue;
    writeFileSync(`${folder}/${file}.gz`, gzipSync(bytes, { level: 9 }));
    const params = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY };
    writeFileSync(`${folder}/${file}.br`, brotliCompressSync(bytes, { params }));
  }
}
