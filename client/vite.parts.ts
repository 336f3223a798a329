/*
 * Builds the page of all parts into client/dist-parts, apart from the app: it is for whoever makes the parts, and must reach neither
 * the precache nor the wheel. `npm run parts` builds it and shows it.
 */
import { defineConfig } from "vite";

export default defineConfig({
  base: "./",
  publicDir: false,
  logLevel: "warn",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: { target: "es2022", outDir: "dist-parts", emptyOutDir: true, assetsInlineLimit: 0, cssCodeSplit: false, rolldownOptions: { input: "parts.html" } },
  preview: { host: "localhost", open: false },
});
