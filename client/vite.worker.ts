/*
 * Builds the service worker by a run of its own into one classic script: together with the app it would get an
 * `import` at its top, which a classic worker cannot have.
 */
import { defineConfig } from "vite";

export default defineConfig({
  publicDir: false,
  logLevel: "warn",
  // Workbox asks for it to tell development from production; a worker has no `process`.
  define: { "process.env.NODE_ENV": JSON.stringify("production") },
  build: {
    target: "es2022",
    outDir: "dist",
    emptyOutDir: false,
    lib: { entry: "src/sw.ts", formats: ["iife"], name: "quietcuffWorker", fileName: () => "sw.js" },
  },
});
