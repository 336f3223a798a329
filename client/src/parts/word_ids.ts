/* From a code of the wire, the rules or the record to the end of a word id. */

/** above_elbow as above-elbow. */
export function kebab(code: string): string {
  return code.replaceAll("_", "-");
}
