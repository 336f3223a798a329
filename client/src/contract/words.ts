/*
 * Sentences by id, from shared_schemas/words/en.ftl: every text a person reads.
 * It must not compute or format a value: facts arrive as they shall be read. A number may arrive as a number where
 * the sentence chooses a plural by it.
 */
import { FluentBundle, FluentResource } from "@fluent/bundle";
import english from "../../../shared_schemas/words/en.ftl?raw";

export type Facts = Readonly<Record<string, string | number>>;

/** A bundle of sentences in Fluent's notation; isolation marks are off, since the sentences hold no mixed scripts. */
export function wordsFrom(source: string): FluentBundle {
  const bundle = new FluentBundle("en", { useIsolating: false });
  const errors = bundle.addResource(new FluentResource(source));
  if (errors.length > 0) throw errors[0];
  return bundle;
}

const WORDS = wordsFrom(english);

/** Adds the sentences of screens that are loaded later; an id that is already taken, or a broken sentence, throws. */
export function addWords(source: string): void {
  const errors = WORDS.addResource(new FluentResource(source));
  if (errors.length > 0) throw errors[0];
}

/** Is there a sentence of this id? */
export function hasWords(id: string, words: FluentBundle = WORDS): boolean {
  const pattern = words.getMessage(id)?.value;
  return pattern !== null && pattern !== undefined;
}

/** The sentence of an id with its facts filled in; a missing sentence reads `[id]`, never a blank. */
export function say(id: string, facts: Facts = {}, words: FluentBundle = WORDS): string {
  const pattern = words.getMessage(id)?.value;
  if (pattern === null || pattern === undefined) return `[${id}]`;
  return words.formatPattern(pattern, facts, []);
}
