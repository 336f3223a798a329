/*
 * The whole build of the client: types, type check, app, worker, precache list, compressed copies, engine, sizes.
 * `node build/build.mjs`; stops at the first step that fails. It must not need a network.
 */
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { build } from "vite";
import { compress } from "./compress.mjs";
import { writePrecache } from "./precache.mjs";
import { requireSmall } from "./sizes.mjs";

const client = fileURLToPath(new URL("..", import.meta.url));
const dist = `${client}dist`;
process.chdir(client);

/** The page, the worker and what runs in Node know different globals, hence three. */
const PROJECTS = ["tsconfig.json", "tsconfig.worker.json", "tsconfig.node.json"];

/** Runs a program of this machine and fails when it fails. */
function run(program, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: "inherit" });
    child.on("error", reject);
    child.on("exit", (code) => (code === 0 ? resolve() : reject(new Error(`${args.join(" ")}: exit ${code}`))));
  });
}

const typeCheck = (project) => run(process.execPath, ["node_modules/typescript/bin/tsc", "--noEmit", "-p", project]);

async function step(name, work) {
  const begun = performance.now();
  await work();
  console.log(`${name.padEnd(12)} ${((performance.now() - begun) / 1000).toFixed(2)} s`);
}

try {
  await step("types", () => run(process.execPath, ["build/wire_types.mjs"]));
  await step("type check", () => Promise.all(PROJECTS.map(typeCheck)));
  await step("app", () => build({ configFile: "vite.config.ts" }));
  await step("worker", () => build({ configFile: "vite.worker.ts" }));
  await step("precache", () => writePrecache(dist));
  await step("compress", () => compress(dist));
  await step("engine", () => build({ configFile: "vite.engine.ts" }));
  console.log(requireSmall(dist));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
