/* What to say when the phone could not keep something. What was typed stays on the screen in every case. */
import type { JSX } from "preact";
import { hasWords, say } from "../../contract/words";
import { PhoneTrouble } from "../../offline/journal";
import { kebab } from "../../parts/word_ids";

/** The word of the sentence for a failed write; unknown failures get the general one. */
export function storageWord(failure: unknown): string {
  const code = failure instanceof PhoneTrouble ? kebab(failure.code) : "";
  return [`storage-${code}`, `phone-${code}`].find((word) => hasWords(word)) ?? "kept-not";
}

export function StorageProblem({ word }: { word: string | undefined }): JSX.Element | null {
  return word ? (
    <p class="note" role="alert">
      {say(word)}
    </p>
  ) : null;
}
