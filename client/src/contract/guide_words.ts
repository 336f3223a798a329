/*
 * The words of the guides and the glossary, from shared_schemas/words/en_guide.ftl.
 * It must be imported by lazily loaded screens and their parts alone: the first paint does not wait for it.
 */
import guide from "../../../shared_schemas/words/en_guide.ftl?raw";
import { hasWords, say, wordsFrom, type Facts } from "./words";

const WORDS = wordsFrom(guide);

/** Is there a guide sentence of this id? */
export function hasGuide(id: string): boolean {
  return hasWords(id, WORDS);
}

/** The guide's sentence of an id with its facts filled in; a missing one reads `[id]`. */
export function sayGuide(id: string, facts: Facts = {}): string {
  return say(id, facts, WORDS);
}
