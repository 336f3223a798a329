/*
 * Runs the client's tests in Node: tests/client/**\/*.test.ts of the repository. They stand outside this folder, so the
 * packages they name are looked up here.
 */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const PACKAGES = /^(vitest|fake-indexeddb|idb|preact|@preact\/signals)(\/.*)?$/;

export default defineConfig({
  root: here(".."),
  cacheDir: here("node_modules/.vite"),
  oxc: { jsx: { runtime: "automatic", importSource: "preact", development: false } },
  resolve: {
    alias: [{ find: PACKAGES, replacement: `${here("node_modules")}/$1$2` }],
  },
  test: {
    include: ["tests/client/**/*.test.ts", "tests/client/**/*.test.tsx"],
    maxWorkers: 2,
    passWithNoTests: false,
  },
});
