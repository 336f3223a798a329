/* The last twenty acts of a measurement and how each is taken back.
   An act is a list of patches on one plain document; its reverse is worked out when it is done and kept with it, so that
   undo survives a killed tab. Knows nothing of readings or screens, and never changes a document in place. */

export type Plain = null | boolean | number | string | Plain[] | { [key: string]: Plain | undefined };

/** Where in the document, and what it shall be; without `to` it is taken away (of a list: only its last item). */
export interface Patch {
  at: (string | number)[];
  to?: Plain;
}

/** One act: the word that names it, facts for that word, and the patches that take it back, in the order to apply. */
export interface Act {
  word: string;
  facts: Record<string, string>;
  reverse: Patch[];
}

/** How many acts can be taken back. */
export const ACTS_KEPT = 20;

type Holder = Record<string | number, Plain | undefined>;

function copyOf(value: Plain | undefined, next: string | number): Holder {
  if (Array.isArray(value)) return [...value] as unknown as Holder;
  if (value !== null && typeof value === "object") return { ...value } as Holder;
  return (typeof next === "number" ? [] : {}) as Holder;
}

function put(holder: Holder, key: string | number, to: Plain | undefined): void {
  if (to !== undefined) holder[key] = to;
  else if (!Array.isArray(holder)) delete holder[key];
  else if (key === holder.length - 1) holder.length -= 1;
  else throw new RangeError("only the last item of a list can be taken away");
}

/** The document with one patch applied, and the patch that takes it back. The given document stays as it was. */
export function patched<T extends object>(document: T, patch: Patch): [T, Patch] {
  const [last, path] = [patch.at[patch.at.length - 1], patch.at.slice(0, -1)];
  if (last === undefined) throw new RangeError("a patch needs a place");
  const whole = copyOf(document as unknown as Plain, 0);
  let holder = whole;
  path.forEach((key, depth) => {
    const inner = copyOf(holder[key], patch.at[depth + 1] as string | number);
    holder[key] = inner as unknown as Plain;
    holder = inner;
  });
  const before = holder[last];
  put(holder, last, patch.to);
  const reverse: Patch = before === undefined ? { at: patch.at } : { at: patch.at, to: before };
  return [whole as unknown as T, reverse];
}

/** Does an act: applies its patches in order and keeps the way back; the oldest act beyond twenty is forgotten. */
export function done<T extends { acts: Act[] }>(document: T, word: string, facts: Record<string, string>, patches: Patch[]): T {
  let now = document;
  const reverse: Patch[] = [];
  for (const patch of patches) {
    const [next, back] = patched(now, patch);
    now = next;
    reverse.unshift(back);
  }
  return { ...now, acts: [...document.acts, { word, facts, reverse }].slice(-ACTS_KEPT) };
}

/** Takes the latest act back; with none left the document comes back as it was. Also the act that was undone. */
export function undone<T extends { acts: Act[] }>(document: T): [T, Act | undefined] {
  const act = document.acts[document.acts.length - 1];
  if (!act) return [document, undefined];
  let now = document;
  for (const patch of act.reverse) [now] = patched(now, patch);
  return [{ ...now, acts: document.acts.slice(0, -1) }, act];
}
