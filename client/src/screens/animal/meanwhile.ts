/* An animal changed by somebody while its form lies open here, perhaps on another phone: what was not touched here follows the newer
   wording, what was typed here stays, and where both changed the same a person chooses. Pure. Must not drop either of the two. */
import type { Filled, Form } from "../forms_begun";

/** The fields of one fact of the animal, such as a day of birth and how it was told: changed and chosen together. Never empty. */
export type Fact = readonly [string, ...string[]];

function valueOf({ texts, chosen }: Filled, fact: Fact): string {
  return JSON.stringify(fact.map((field) => (texts[field] ?? chosen[field] ?? "").trim()));
}

/** `into` with these fields as they stand in `from`. */
function put(into: Filled, from: Filled, fields: readonly string[]): Filled {
  const mixed = (key: keyof Filled): Record<string, string> => ({
    ...Object.fromEntries(Object.entries(into[key]).filter(([field]) => !fields.includes(field))),
    ...Object.fromEntries(Object.entries(from[key]).filter(([field]) => fields.includes(field))),
  });
  return { texts: mixed("texts"), chosen: mixed("chosen") };
}

const NOTHING: Filled = { texts: {}, chosen: {} };

/** Is it known what stood there when the form was begun? Not of a form kept by an earlier build, until a person chose. */
export function isKnown({ before, knows }: Form, [field]: Fact): boolean {
  return before !== undefined && (knows === undefined || knows.includes(field));
}

/** The same again with the newer wording known: a difference from it is meant from now on. */
function knowing(form: Form, now: Filled, facts: readonly Fact[]): Form {
  const knows = form.before && !form.knows ? undefined : [...new Set([...(form.knows ?? []), ...facts.map(([field]) => field)])];
  return { ...form, before: put(form.before ?? NOTHING, now, facts.flat()), ...(knows ? { knows } : {}) };
}

/** Does it stand as it did before? Where nobody knows, it does not. */
const isAsBefore = (form: Form, filled: Filled, fact: Fact): boolean => isKnown(form, fact) && valueOf(form.before ?? NOTHING, fact) === valueOf(filled, fact);

/** Was something typed or chosen in it here? */
const isTouched = (form: Form, fact: Fact): boolean => !isAsBefore(form, form, fact);

/** Did somebody save it anew since the form was begun? */
const isNewer = (form: Form, now: Filled, fact: Fact): boolean => !isAsBefore(form, now, fact);

const isAlike = (form: Form, now: Filled, fact: Fact): boolean => valueOf(form, fact) === valueOf(now, fact);

/** The form over the wording of now: facts not touched here are taken over. The same object where nothing is newer. */
export function settled(form: Form, now: Filled, facts: readonly Fact[]): Form {
  const newer = facts.filter((fact) => isNewer(form, now, fact));
  const over = newer.filter((fact) => !isTouched(form, fact));
  const alike = newer.filter((fact) => isTouched(form, fact) && isAlike(form, now, fact));
  if (over.length + alike.length === 0) return form;
  const isBegun = facts.some((fact) => isTouched(form, fact)); // what nobody began to change has nothing to be told of
  const taken = isBegun ? [...new Set([...(form.taken ?? []), ...over.map(([field]) => field)])] : form.taken;
  const known = knowing(form, now, [...over, ...alike]);
  return { ...known, ...put(form, now, over.flat()), ...(taken && taken.length > 0 ? { taken } : {}) };
}

/** The facts taken over in which nothing was typed or chosen since. */
export function takenStill(form: Form, facts: readonly Fact[]): Fact[] {
  return facts.filter((fact) => form.taken?.includes(fact[0]) && !isTouched(form, fact));
}

/** The facts changed both here and elsewhere, each to something else. */
export function inDispute(form: Form, now: Filled, facts: readonly Fact[]): Fact[] {
  return facts.filter((fact) => isNewer(form, now, fact) && isTouched(form, fact) && !isAlike(form, now, fact));
}

/** What was typed here is meant to stand over the newer wording. */
export function keptHere(form: Form, now: Filled, fact: Fact): Form {
  return knowing(form, now, [fact]);
}

/** The newer wording is meant to stand. */
export function tookOver(form: Form, now: Filled, fact: Fact): Form {
  return { ...knowing(form, now, [fact]), ...put(form, now, fact) };
}
