/*
 * Builds the app of the phone into client/dist: one page, external scripts and styles with hashed names.
 * Nothing inline (the content security policy forbids it), and everything the page can load is in the precache.
 */
import { defineConfig } from "vite";

export default defineConfig({
  base: "/",
  logLevel: "warn",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    target: "es2022",
    outDir: "dist",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    cssCodeSplit: false,
    modulePreload: { polyfill: false },
  },
  server: { host: "localhost", fs: { allow: [".."] } },
});
