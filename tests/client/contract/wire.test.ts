/*
 * The wire check: its order of problems, its codes, JSON Pointers (RFC 6901), and the two rules a schema cannot say.
 * Expected values follow from the schemas and the fixed order; the pointer escapes are those of RFC 6901, section 3.
 */
import { describe, expect, test } from "vitest";
import { check, checkMeasurement } from "../../../client/src/contract/wire.ts";
import { requireKnownKeywords } from "../../../client/src/contract/schema_keywords.ts";

const ID = "01890a5d-ac96-774b-bcce-b302099a8057";
const patient = { species: "cat", name: "Mo" };
const reading = { id: "a", systolic_mmhg: 140 };
const visit = (readings: object[], more: object = {}) => ({
  species: "dog",
  sets: [{ method: "doppler", readings }],
  ...more,
});
const problem = (path: string, why: string) => ({ path, why });

test("good documents have no problem", () => {
  expect(check("patient.1", patient)).toBeUndefined();
  expect(check("patient.1", { ...patient, born_on_day: -3 })).toBeUndefined();
  expect(checkMeasurement(visit([reading]))).toBeUndefined();
  expect(checkMeasurement(visit([]))).toBeUndefined();
  expect(checkMeasurement(visit([{ id: "a", beyond: "no_sound" }], { patient: ID }))).toBeUndefined();
});

test("good documents with all that an animal, a bag and a visit may say", () => {
  const sites = [{ site: "forearm", side: "left", why: "catheter", until_day: 20_000 }, { site: "tail_base", why: "missing" }];
  const identifiers = [{ kind: "chip", text: "276098100000001" }];
  const whole = { ...patient, identifiers, sites_not_used: sites, handling: { grade: 0, trick: "slowly" }, bruises: false };
  expect(check("patient.1", whole)).toBeUndefined();
  const probe = { name: "Probe", validated_in: ["dog", "cat"], validated_by: "somewhere", checked_on_day: 0 };
  expect(check("bag.1", { name: "Van" })).toBeUndefined();
  const cuffs = [{ width_mm: 1 }, { width_mm: 500, mark: "blue" }];
  const gauges = [{ name: "G", type: "digital" }];
  expect(check("bag.1", { name: "Van", cuffs, gauges, detectors: [probe], machines: [probe] })).toBeUndefined();
  const ready = { breathing_easy: true, awake: true, no_pain: false, safe_to_handle: true };
  const outcome = { kind: "not_today", why: "in_pain", note: "helped first" };
  const drugs = [{ group: "beta_blocker", hours: 3 }, { group: "not_known" }];
  const said = { ready, outcome, drugs, circumstances: ["examined"], signs: ["eye"], owner_present: true };
  expect(checkMeasurement(visit([], said))).toBeUndefined();
});

describe("codes", () => {
  test.each([
    ["patient.1", [], "", "not_an_object"],
    ["patient.1", null, "", "not_an_object"],
    ["patient.1", { ...patient, name: 5 }, "/name", "not_text"],
    ["patient.1", { ...patient, name: "" }, "/name", "too_short"],
    ["patient.1", { ...patient, name: "x".repeat(81) }, "/name", "too_long"],
    ["patient.1", { ...patient, species: "cow" }, "/species", "not_in_list"],
    ["patient.1", { ...patient, born_on_day: 1.5 }, "/born_on_day", "not_a_whole_number"],
    ["patient.1", { ...patient, born_on_day: true }, "/born_on_day", "not_a_whole_number"],
    ["patient.1", { ...patient, born_on_day: Infinity }, "/born_on_day", "not_a_whole_number"],
    ["patient.1", { ...patient, born_on_day: "1" }, "/born_on_day", "not_a_whole_number"],
    ["patient.1", { ...patient, born_on_day: -40001 }, "/born_on_day", "below_minimum"],
    ["patient.1", { ...patient, born_on_day: 80001 }, "/born_on_day", "above_maximum"],
    ["patient.1", { ...patient, born_on_day: 2 ** 60 }, "/born_on_day", "above_maximum"],
    ["patient.1", { name: "Mo" }, "/species", "missing"],
    ["patient.1", {}, "/species", "missing"],
    ["patient.1", { ...patient, identifiers: [{ kind: "passport", text: "1" }] }, "/identifiers/0/kind", "not_in_list"],
    ["patient.1", { ...patient, identifiers: [{ kind: "chip" }] }, "/identifiers/0/text", "missing"],
    ["patient.1", { ...patient, identifiers: Array(9).fill({ kind: "tag", text: "1" }) }, "/identifiers", "too_many_items"],
    ["patient.1", { ...patient, sites_not_used: [{ site: "ear", why: "wound" }] }, "/sites_not_used/0/site", "not_in_list"],
    ["patient.1", { ...patient, sites_not_used: [{ site: "forearm" }] }, "/sites_not_used/0/why", "missing"],
    ["patient.1", { ...patient, handling: { grade: 4 } }, "/handling/grade", "above_maximum"],
    ["patient.1", { ...patient, handling: { trick: "slowly" } }, "/handling/grade", "missing"],
    ["patient.1", { ...patient, bruises: "yes" }, "/bruises", "not_true_or_false"],
    ["bag.1", {}, "/name", "missing"],
    ["bag.1", { name: "Van", cuffs: [{ width_mm: 0 }] }, "/cuffs/0/width_mm", "below_minimum"],
    ["bag.1", { name: "Van", cuffs: [{ width_mm: 501 }] }, "/cuffs/0/width_mm", "above_maximum"],
    ["bag.1", { name: "Van", cuffs: Array(31).fill({ width_mm: 25 }) }, "/cuffs", "too_many_items"],
    ["bag.1", { name: "Van", gauges: [{ name: "G" }] }, "/gauges/0/type", "missing"],
    ["bag.1", { name: "Van", machines: [{ name: "M", validated_in: ["rabbit"] }] }, "/machines/0/validated_in/0", "not_in_list"],
    ["measurement.1", visit([], { ready: { awake: 1 } }), "/ready/awake", "not_true_or_false"],
    ["measurement.1", visit([], { outcome: { kind: "not_today" } }), "/outcome/why", "missing"],
    ["measurement.1", visit([], { drugs: [{ group: "vitamin" }] }), "/drugs/0/group", "not_in_list"],
    ["measurement.1", visit([], { circumstances: ["bored"] }), "/circumstances/0", "not_in_list"],
    ["measurement.1", { species: "dog", sets: {} }, "/sets", "not_a_list"],
    ["measurement.1", { species: "dog", sets: [] }, "/sets", "too_few_items"],
    ["measurement.1", visit([], { signs: Array(7).fill("eye") }), "/signs", "too_many_items"],
    ["measurement.1", visit([], { owner_present: 1 }), "/owner_present", "not_true_or_false"],
    ["measurement.1", visit([], { patient: ID.toUpperCase() }), "/patient", "wrong_form"],
    ["measurement.1", visit([], { patient: `${ID}0` }), "/patient", "too_long"],
  ])("%s %j: %s %s", (name, document, path, why) => expect(check(name, document)).toEqual(problem(path, why)));

  test("the limits themselves are allowed", () => {
    expect(check("patient.1", { ...patient, name: "x".repeat(80), born_on_day: 80000 })).toBeUndefined();
    expect(check("patient.1", { ...patient, name: "x", born_on_day: -40000 })).toBeUndefined();
  });

  test("lengths are counted in code points: 80 signs above U+FFFF fit, 81 do not", () => {
    expect(check("patient.1", { ...patient, name: "\u{1F408}".repeat(80) })).toBeUndefined();
    expect(check("patient.1", { ...patient, name: "\u{1F408}".repeat(81) })).toEqual(problem("/name", "too_long"));
  });
});

describe("the first problem", () => {
  test("unknown keys come first, the smallest by code point, whatever their order", () => {
    expect(check("patient.1", { zz: 1, b: 1, name: 5 })).toEqual(problem("/b", "unknown_key"));
    // U+FF5E is before U+1F408 by code point, but after its first UTF-16 unit.
    expect(check("patient.1", { "\u{1F408}": 1, "\uFF5E": 1 })).toEqual(problem("/\uFF5E", "unknown_key"));
    expect(check("patient.1", { ab: 1, a: 1 })).toEqual(problem("/a", "unknown_key"));
    expect(check("patient.1", JSON.parse('{"__proto__": 1}'))).toEqual(problem("/__proto__", "unknown_key"));
    expect(check("patient.1", { toString: 1 })).toEqual(problem("/toString", "unknown_key"));
  });
  test("then what is missing, in the schema's order", () => {
    expect(check("measurement.1", { state: "asleep" })).toEqual(problem("/species", "missing"));
    expect(check("letter.1", { id: ID, schema: 0 })).toEqual(problem("/kind", "missing"));
  });
  test("then the properties in the schema's order, depth first", () => {
    const wrong = visit([{ id: "a", systolic_mmhg: 1000, taken_s: -1 }], { state: "asleep" });
    expect(check("measurement.1", wrong)).toEqual(problem("/state", "not_in_list"));
    expect(check("measurement.1", { ...wrong, state: "awake" })).toEqual(
      problem("/sets/0/readings/0/taken_s", "below_minimum"),
    );
  });
  test("pattern before list and length before pattern", () => {
    expect(check("envelope.1", { device: ID, number: 1, sha: "x".repeat(65) })).toEqual(problem("/sha", "too_long"));
    expect(check("envelope.1", { device: ID, number: 1, sha: "x" })).toEqual(problem("/sha", "wrong_form"));
  });
});

test("RFC 6901: ~ is ~0 and / is ~1", () => {
  expect(check("patient.1", { "a/b": 1 })).toEqual(problem("/a~1b", "unknown_key"));
  expect(check("patient.1", { "m~n": 1 })).toEqual(problem("/m~0n", "unknown_key"));
  expect(check("patient.1", { "~1": 1 })).toEqual(problem("/~01", "unknown_key"));
});

test("an object without properties admits any object, and only an object", () => {
  expect(check("answer.1", { line: 1, answer: "stored", assessment: { anything: [null] } })).toBeUndefined();
  expect(check("answer.1", { line: 1, answer: "stored", assessment: [] })).toEqual(
    problem("/assessment", "not_an_object"),
  );
});

describe("what a schema cannot say of a measurement", () => {
  test.each([
    [[reading, reading], "/sets/0/readings/1/id", "id_twice"],
    [[{ id: "a" }], "/sets/0/readings/0", "neither_numbers_nor_beyond"],
    [[{ id: "a", mean_mmhg: 100 }], "/sets/0/readings/0", "neither_numbers_nor_beyond"],
    [[{ ...reading, beyond: "no_value" }], "/sets/0/readings/0", "numbers_and_beyond"],
    [[{ id: "a", pulse_bpm: 90, beyond: "no_value" }], "/sets/0/readings/0", "numbers_and_beyond"],
    [[reading, { id: "b" }, reading], "/sets/0/readings/2/id", "id_twice"],
  ])("%j: %s %s", (readings, path, why) => expect(checkMeasurement(visit(readings))).toEqual(problem(path, why)));

  test("ids are unique in the measurement, not only in the set", () => {
    const set = { method: "doppler", readings: [reading] };
    const twice = problem("/sets/1/readings/0/id", "id_twice");
    expect(checkMeasurement({ species: "dog", sets: [set, set] })).toEqual(twice);
  });
});

describe("the keyword list is closed", () => {
  test.each([
    [{ type: "number" }],
    [{ type: "string", format: "uuid" }],
    [{ type: "string", minimum: 1 }],
    [{ oneOf: [] }],
    [{ type: "object", properties: {} }],
    [{ type: "object", additionalProperties: true }],
    [{ type: "string", pattern: "a" }],
    [{ type: "string", pattern: "^a$" }],
    [{ $ref: "x.1.json", type: "object" }],
    [{ type: "array", items: { type: "null" } }],
  ])("%j raises", (schema) => expect(() => requireKnownKeywords(schema as never, "test")).toThrow());

  test("an unknown schema raises", () => expect(() => check("patient.99", {})).toThrow(/unknown schema/));
});
