/**
 * The sync core is handed its world: it type-checks without a browser and without Node, and names no clock and no chance.
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
const CHECK = "export declare function check(name: string, document: unknown): { path: string; why: string } | undefined;\n";
const SIGNALS = "export interface Signal<Value> { value: Value }\n";

/** What the compiler says of the pure files when it knows the language and nothing else; `extra` is appended to sync.ts. */
function compile(extra = ""): string {
  const folder = mkdtempSync(join(CLIENT, "node_modules", "pure-"));
  try {
    for (const name of [...PURE, "phone_types.ts", "hex.ts"]) {
      const source = readFileSync(join(OFFLINE, name), "utf8").replace("../contract/wire.ts", "./wire.ts");
      writeFileSync(join(folder, name), source.replace('"@preact/signals"', '"./signals.ts"') + (name === "sync.ts" ? extra : ""));
    }
    writeFileSync(join(folder, "wire.ts"), CHECK.replace("declare ", "").replace("undefined;", "undefined { throw [name, document]; }"));
    writeFileSync(join(folder, "signals.ts"), SIGNALS);
    writeFileSync(join(folder, "allowed.d.ts"), ALLOWED);
    const options = { target: "ES2022", lib: ["ES2022"], types: [], strict: true, noEmit: true, module: "ESNext", moduleResolution: "Bundler" };
    const config = { compilerOptions: { ...options, allowImportingTsExtensions: true, skipLibCheck: true }, include: ["*.ts"] };
    writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(config));
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

it("leaves every write to one file", () => {
  const writers = readdirSync(OFFLINE).filter((name) => /"readwrite"|\binOneTransaction\(/.test(readFileSync(join(OFFLINE, name), "utf8")));
  expect(writers.sort()).toEqual(["database.ts", "writes.ts"]);
});
