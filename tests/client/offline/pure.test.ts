/**
 * The sync core is handed its world: it type-checks without a browser and without Node, and names no clock, no chance.
 * And only `writes.ts` writes.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const CLIENT = fileURLToPath(new URL("../../../client/", import.meta.url));
const OFFLINE = join(CLIENT, "src/offline");
const PURE = ["sync.ts", "bundle.ts", "chain.ts", "pace.ts", "replies.ts", "projection.ts"];
/** The two of the platform's that turn text into bytes and back; they read and keep nothing. */
const ALLOWED = "declare class TextEncoder { encode(text: string): Uint8Array<ArrayBuffer>; }\n" +
  "declare class TextDecoder { constructor(label?: string, options?: object); decode(bytes: Uint8Array): string; }\n";
const CHECK =
  "export function check(name: string, document: unknown): { path: string; why: string } | undefined " +
  "{ throw [name, document]; }\n";
const SIGNALS = "export interface Signal<Value> { value: Value }\n";

/** What the compiler says of the pure files when it knows the language alone; `extra` is appended to sync.ts. */
function compile(extra = ""): string {
  const folder = mkdtempSync(join(CLIENT, "node_modules", "pure-"));
  try {
    for (const name of [...PURE, "phone_types.ts", "hex.ts"]) {
      const source = readFileSync(join(OFFLINE, name), "utf8").replace("../contract/wire.ts", "./wire.ts");
      const alone = source.replace('"@preact/signals"', '"./signals.ts"');
      writeFileSync(join(folder, name), alone + (name === "sync.ts" ? extra : ""));
    }
    writeFileSync(join(folder, "wire.ts"), CHECK);
    writeFileSync(join(folder, "signals.ts"), SIGNALS);
    writeFileSync(join(folder, "allowed.d.ts"), ALLOWED);
    const compilerOptions = {
      ...{ target: "ES2022", lib: ["ES2022"], types: [], module: "ESNext", moduleResolution: "Bundler" },
      ...{ strict: true, noEmit: true, allowImportingTsExtensions: true, skipLibCheck: true },
    };
    writeFileSync(join(folder, "tsconfig.json"), JSON.stringify({ compilerOptions, include: ["*.ts"] }));
    return spawnSync(join(CLIENT, "node_modules/.bin/tsc"), ["-p", folder], { encoding: "utf8" }).stdout;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

it("type-checks with the language alone, and not when it reaches for the platform", { timeout: 30_000 }, () => {
  expect(compile()).toBe("");
  const reaching = ["fetch", "crypto", "setTimeout", "indexedDB", "navigator", "document", "console", "process"];
  const said = compile(reaching.map((name) => `\nexport const use_${name} = ${name};`).join(""));
  for (const name of reaching) expect(said).toContain(`'${name}'`);
});

it("names no clock and no chance of the language", () => {
  const reaching = /\bDate\b|\bMath\.random\b|\bglobalThis\b|\bIntl\b/;
  for (const name of PURE) expect(readFileSync(join(OFFLINE, name), "utf8"), name).not.toMatch(reaching);
  expect(readFileSync(join(OFFLINE, "letter_bytes.ts"), "utf8")).toMatch(reaching); // the search does find one
});

it("leaves every write to one file, and training's to its own, which opens no database but training's", () => {
  const writing = /"readwrite"|\binOneTransaction\(/;
  const text = (name: string): string => readFileSync(join(OFFLINE, name), "utf8");
  const writers = readdirSync(OFFLINE).filter((name) => writing.test(text(name)));
  expect(writers.sort()).toEqual(["database.ts", "training_store.ts", "writes.ts"]);
  expect(text("training_store.ts").match(/name: "quietcuff-[a-z]+"/g)).toEqual(['name: "quietcuff-training"']);
  expect(text("training_store.ts").match(/\bdatabase\(\w+/g)).toEqual(["database(LAYOUT"]);
});
