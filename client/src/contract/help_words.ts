/*
 * Sentences of the screens nobody needs for the first paint: help, this phone, training. From words/en_help.ftl, loaded with
 * those screens. It must not compute or format a value.
 */
import english from "../../../shared_schemas/words/en_help.ftl?raw";
import { type Facts, say, wordsFrom } from "./words";

const WORDS = wordsFrom(english);

/** The sentence of an id with its facts filled in; a missing sentence reads `[id]`. */
export function sayHelp(id: string, facts: Facts = {}): string {
  return say(id, facts, WORDS);
}
