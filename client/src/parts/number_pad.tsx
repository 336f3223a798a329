/* The keys under the thumb. They only say which key was pressed; what that does is decided and kept elsewhere.
   Keys act on click, so that a finger that slides off presses nothing. */
import type { JSX } from "preact";
import { say } from "../contract/words";

export type Key = "delete" | "undo" | "set_aside" | "put_back" | "skip" | "above_gauge" | "no_sound" | "no_value";

interface Props {
  /** Whether the method gives several numbers, so that one can be skipped. */
  several: boolean;
  /** What the third key of the last column does to the latest reading. */
  latest: "set_aside" | "put_back";
  onDigit: (digit: string) => void;
  onKey: (key: Key) => void;
  onAdd: () => void;
}

const WORDS: Record<Key, string> = {
  delete: "pad-delete", undo: "pad-undo", set_aside: "set-aside", put_back: "put-back", skip: "pad-skip",
  above_gauge: "pad-above-gauge", no_sound: "pad-no-sound", no_value: "pad-no-value",
};

/** Four columns: digits, and in the last column what goes with them; *Add* below over the whole width. */
export function NumberPad({ several, latest, onDigit, onKey, onAdd }: Props): JSX.Element {
  const digit = (text: string): JSX.Element => (
    <button key={text} type="button" class="button key number" onClick={() => onDigit(text)}>
      {text}
    </button>
  );
  const word = (key: Key): JSX.Element => (
    <button key={key} type="button" class="button key" onClick={() => onKey(key)}>
      {say(WORDS[key])}
    </button>
  );
  return (
    <div class="keys" role="group" aria-label={say("pad-keys")}>
      {[..."123"].map(digit)}
      {word("delete")}
      {[..."456"].map(digit)}
      {word("undo")}
      {[..."789"].map(digit)}
      {word(latest)}
      {word(several ? "skip" : "no_sound")}
      {digit("0")}
      {word("no_value")}
      {word("above_gauge")}
      <button type="button" class="button act key add" onClick={onAdd}>
        {say("pad-add")}
      </button>
    </div>
  );
}
