/*
 * The phone's rules and checks behind JSON lines, for the command line and for tests: `node engine.mjs`,
 * one call a line on standard input, one answer a line on standard output, in order.
 * It must not hold a rule of its own: what it answers is what the phone would.
 */
import { parseNumber } from "./contract/number.ts";
import { ruleSet } from "./contract/rule_documents.ts";
import { check, checkMeasurement, type Problem } from "./contract/wire.ts";
import { assess } from "./rules/assess.ts";
import { chooseCuff } from "./rules/cuff.ts";
import type { RuleSet } from "./rules/documents.ts";
import type { Measurement, Species } from "./rules/measurement.ts";

interface Call {
  readonly do: string;
  readonly rules?: RuleSet;
  readonly measurement?: unknown;
  readonly schema?: string;
  readonly document?: unknown;
  readonly species?: Species;
  readonly limb_circumference_mm?: number;
  readonly bag_mm?: readonly number[];
  readonly text?: string;
  readonly units?: Readonly<Record<string, number>>;
  readonly decimal?: boolean;
}

const answerProblem = (problem: Problem | undefined): object => (problem ? { error: problem } : {});

function answerAssess(call: Call): object {
  const problem = checkMeasurement(call.measurement);
  return problem ? { error: problem } : assess(call.measurement as Measurement, call.rules ?? ruleSet());
}

/** `measurement.1` gets the whole check, reading ids and numbers against `beyond` included. */
function answerCheck(call: Call): object {
  return answerProblem(
    call.schema === "measurement.1" ? checkMeasurement(call.document) : check(call.schema ?? "", call.document),
  );
}

/** What a bag must be before a width is chosen from it; the rule itself would raise. */
function cuffProblem(call: Call): Problem | undefined {
  const isSize = (value: unknown): boolean => Number.isInteger(value) && (value as number) >= 1;
  if (call.species !== "dog" && call.species !== "cat") return { path: "/species", why: "not_in_list" };
  if (!isSize(call.limb_circumference_mm)) return { path: "/limb_circumference_mm", why: "below_minimum" };
  if (!Array.isArray(call.bag_mm)) return { path: "/bag_mm", why: "not_a_list" };
  if (call.bag_mm.length === 0) return { path: "/bag_mm", why: "too_few_items" };
  const wrong = call.bag_mm.findIndex((width) => !isSize(width));
  return wrong === -1 ? undefined : { path: `/bag_mm/${wrong}`, why: "below_minimum" };
}

function answerCuff(call: Call): object {
  const problem = cuffProblem(call);
  if (problem) return { error: problem };
  const document = (call.rules ?? ruleSet()).documents.cuff;
  return chooseCuff(call.species as Species, call.limb_circumference_mm as number, call.bag_mm ?? [], document);
}

function answerNumber(call: Call): object {
  const parsed = parseNumber(call.text ?? "", { units: call.units, decimal: call.decimal });
  return "code" in parsed ? { error: { path: "", why: parsed.code } } : parsed;
}

const ANSWERS: Readonly<Record<string, (call: Call) => object>> = {
  assess: answerAssess,
  check: answerCheck,
  cuff: answerCuff,
  number: answerNumber,
};

function answer(line: string): object {
  try {
    const call = JSON.parse(line) as Call;
    if (!Object.hasOwn(ANSWERS, call.do)) throw new Error(`unknown call: ${call.do}`);
    return ANSWERS[call.do](call);
  } catch (error) {
    return { error: { path: "", why: `engine: ${error instanceof Error ? error.message : String(error)}` } };
  }
}

/*
 * Lines are split here and not by node:readline, which also breaks at U+2028 inside a JSON text. The answers to what
 * arrived together are written together: one write a line is several times slower.
 */
let begun = "";

function take(text: string): void {
  const lines = (begun + text).split("\n");
  begun = lines.pop() ?? "";
  const answers = lines.filter((line) => line.trim() !== "").map((line) => `${JSON.stringify(answer(line))}\n`);
  if (answers.length > 0) process.stdout.write(answers.join(""));
}

process.stdin.setEncoding("utf8");
process.stdin.on("data", (text) => take(String(text)));
process.stdin.on("end", () => take("\n"));
