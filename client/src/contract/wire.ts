/*
 * Does a document have the shape its wire schema says, and if not, where is the first problem?
 * The order is fixed, so that phone and server name the same first problem; it must not change the document.
 */
import { requireKnownKeywords, type Schema } from "./schema_keywords.ts";

const FILES = import.meta.glob<Schema>(
  ["../../../shared_schemas/wire/*.json", "!../../../shared_schemas/wire/api.json"],
  { eager: true, import: "default" },
);

/** `path` is a JSON Pointer (RFC 6901), "" for the whole document; `why` a code from the closed list. */
export interface Problem {
  readonly path: string;
  readonly why: string;
}

type Check = (value: never, schema: Schema) => Problem | undefined;

const SCHEMAS = new Map<string, Schema>();
const PATTERNS = new Map<string, RegExp>();
for (const [file, schema] of Object.entries(FILES)) {
  const name = file.slice(file.lastIndexOf("/") + 1, -".json".length);
  requireKnownKeywords(schema, name);
  SCHEMAS.set(name, schema);
}

function schemaNamed(name: string): Schema {
  const schema = SCHEMAS.get(name);
  if (!schema) throw new Error(`unknown schema: ${name}`);
  return schema;
}

/** The problem of a part, seen from what holds it. Paths are made on the way up: a good document needs none. */
function inside(key: string | number, { path, why }: Problem): Problem {
  return { path: `/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}${path}`, why };
}

const here = (why: string): Problem => ({ path: "", why });

/** Length in code points, as the server counts. */
const codePoints = (text: string): number => Array.from(text).length;

/** Is `one` before `other` by code point? `<` compares UTF-16 units, which differs above U+FFFF. */
function isBefore(one: string, other: string): boolean {
  const left = Array.from(one, (sign) => sign.codePointAt(0) as number);
  const right = Array.from(other, (sign) => sign.codePointAt(0) as number);
  const at = left.findIndex((code, index) => code !== right[index]);
  if (at === -1) return left.length < right.length;
  return at < right.length && left[at] < right[at];
}

function unknownKey(document: Record<string, unknown>, schema: Schema): string | undefined {
  let first: string | undefined;
  for (const key of Object.keys(document)) {
    if (Object.hasOwn(schema.properties as object, key)) continue;
    if (first === undefined || isBefore(key, first)) first = key;
  }
  return first;
}

function checkObject(document: Record<string, unknown>, schema: Schema): Problem | undefined {
  if (!schema.properties) return undefined;
  const unknown = unknownKey(document, schema);
  if (unknown !== undefined) return inside(unknown, here("unknown_key"));
  const missing = schema.required?.find((key) => !Object.hasOwn(document, key));
  if (missing !== undefined) return inside(missing, here("missing"));
  for (const key in schema.properties) {
    if (!Object.hasOwn(document, key)) continue;
    const problem = checkValue(document[key], schema.properties[key]);
    if (problem) return inside(key, problem);
  }
  return undefined;
}

function checkList(list: readonly unknown[], schema: Schema): Problem | undefined {
  if (list.length < (schema.minItems ?? 0)) return here("too_few_items");
  if (list.length > (schema.maxItems ?? Infinity)) return here("too_many_items");
  if (!schema.items) return undefined;
  for (let index = 0; index < list.length; index += 1) {
    const problem = checkValue(list[index], schema.items);
    if (problem) return inside(index, problem);
  }
  return undefined;
}

function patternOf(source: string): RegExp {
  let pattern = PATTERNS.get(source);
  if (!pattern) PATTERNS.set(source, (pattern = new RegExp(source, "u")));
  return pattern;
}

function checkText(text: string, schema: Schema): Problem | undefined {
  const length = codePoints(text);
  if (length < (schema.minLength ?? 0)) return here("too_short");
  if (length > (schema.maxLength ?? Infinity)) return here("too_long");
  if (schema.pattern !== undefined && !patternOf(schema.pattern).test(text)) return here("wrong_form");
  if (schema.enum && !schema.enum.includes(text)) return here("not_in_list");
  return undefined;
}

function checkWhole(value: number, schema: Schema): Problem | undefined {
  if (value < (schema.minimum ?? -Infinity)) return here("below_minimum");
  if (value > (schema.maximum ?? Infinity)) return here("above_maximum");
  if (schema.enum && !schema.enum.includes(value)) return here("not_in_list");
  return undefined;
}

/** A type, what belongs to it, the code when it does not, and the check of what it may hold. */
const TYPES: Readonly<Record<string, { is: (value: unknown) => boolean; why: string; check: Check }>> = {
  object: {
    is: (value) => typeof value === "object" && value !== null && !Array.isArray(value),
    why: "not_an_object",
    check: checkObject,
  },
  array: { is: Array.isArray, why: "not_a_list", check: checkList },
  string: { is: (value) => typeof value === "string", why: "not_text", check: checkText },
  integer: { is: Number.isInteger, why: "not_a_whole_number", check: checkWhole },
  boolean: { is: (value) => typeof value === "boolean", why: "not_true_or_false", check: () => undefined },
};

function checkValue(value: unknown, schema: Schema): Problem | undefined {
  if (schema.$ref !== undefined) return checkValue(value, schemaNamed(schema.$ref.replace(/\.json$/, "")));
  const type = TYPES[schema.type as string];
  return type.is(value) ? type.check(value as never, schema) : here(type.why);
}

/** The first problem of a document against the schema named, such as `patient.1`; none: undefined. */
export function check(name: string, document: unknown): Problem | undefined {
  return checkValue(document, schemaNamed(name));
}

interface LooseReading {
  readonly id: string;
  readonly beyond?: string;
  readonly [key: string]: unknown;
}

type Sets = readonly { readonly readings: readonly LooseReading[] }[];

const NUMBERS = ["systolic_mmhg", "mean_mmhg", "diastolic_mmhg", "pulse_bpm", "palpated_bpm"];

/** The first problem `look` finds in a reading, with its path in the measurement. */
function firstInReadings(sets: Sets, look: (reading: LooseReading) => Problem | undefined): Problem | undefined {
  for (let set = 0; set < sets.length; set += 1) {
    const { readings } = sets[set];
    for (let index = 0; index < readings.length; index += 1) {
      const problem = look(readings[index]);
      if (problem) return inside("sets", inside(set, inside("readings", inside(index, problem))));
    }
  }
  return undefined;
}

function numbersProblem(reading: LooseReading): Problem | undefined {
  if (reading.beyond !== undefined) {
    return NUMBERS.some((key) => reading[key] !== undefined) ? here("numbers_and_beyond") : undefined;
  }
  return reading.systolic_mmhg === undefined ? here("neither_numbers_nor_beyond") : undefined;
}

/**
 * `check` of measurement.1, then what a schema cannot say: ids once only in the whole measurement (path of the
 * later id), then for each reading numbers or `beyond`, never both (path of the reading).
 */
export function checkMeasurement(document: unknown): Problem | undefined {
  const problem = check("measurement.1", document);
  if (problem) return problem;
  const { sets } = document as { sets: Sets };
  const seen = new Set<string>();
  const twice = firstInReadings(sets, ({ id }) => {
    if (seen.has(id)) return inside("id", here("id_twice"));
    seen.add(id);
    return undefined;
  });
  return twice ?? firstInReadings(sets, numbersProblem);
}
