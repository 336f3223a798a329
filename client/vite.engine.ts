/*
 * Builds the phone's rules and wire check into one file for Node: client/dist-engine/engine.mjs.
 * It must not reach the precache: it is for the command line and for tests, not for the phone.
 */
import { defineConfig } from "vite";

export default defineConfig({
  publicDir: false,
  logLevel: "warn",
  build: {
    ssr: "src/engine.ts",
    target: "node20",
    outDir: "dist-engine",
    emptyOutDir: true,
    rolldownOptions: { output: { entryFileNames: "engine.mjs", format: "es" } },
  },
  ssr: { target: "node", noExternal: true },
});
