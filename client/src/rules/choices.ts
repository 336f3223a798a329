/*
 * Answers which function a word under `choices` of a rule document names.
 * It must not fall back: a word this engine does not know means the document is newer than the engine.
 */

/** The function named by `word`; an unknown word raises. */
export function chosen<F>(functions: Readonly<Record<string, F>>, word: string): F {
  if (!Object.hasOwn(functions, word)) throw new Error(`unknown choice: ${word}`);
  return functions[word];
}
