/* The keys under the thumb. They only say which key was pressed; what that does is decided and kept elsewhere.
   Keys act on click, so that a finger that slides off presses nothing. */
import type { JSX } from "preact";
import { say } from "../contract/words";

export type Key = "delete" | "undo" | "set_aside" | "put_back" | "skip" | "next" | "above_gauge" | "no_sound" | "no_value" | "pulse";

interface Props {
  /** Whether a machine gives several numbers, so that one can be skipped; otherwise a gauge is read and a probe is heard. */
  several: boolean;
  /** Whether the field of the keys holds text: then the key leads on, and nothing is skipped. */
  begun: boolean;
  /** What the third key of the last column does to the latest reading. */
  latest: "set_aside" | "put_back";
  onDigit: (digit: string) => void;
  onKey: (key: Key) => void;
  onAdd: () => void;
}

const WORDS: Record<Key, string> = {
  delete: "pad-delete", undo: "pad-undo", set_aside: "set-aside", put_back: "put-back", skip: "pad-skip", next: "pad-next",
  above_gauge: "pad-above-gauge", no_sound: "pad-no-sound", no_value: "pad-no-value",
  pulse: "pad-tap-pulse",
};

/**
 * A gauge can be too short and a probe can hear nothing; a machine shows a value or none. The place that is free by that is the pulse's.
 * Digits in three columns and beside them what goes with them, *Add* over the whole width. With large text the words move below
 * the digits as a whole: a 3 that stands under a 1 is typed wrong.
 */
export function NumberPad({ several, begun, latest, onDigit, onKey, onAdd }: Props): JSX.Element {
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
    <div class="pad" role="group" aria-label={say("pad-keys")}>
      <div class="pad-digits">
        {[..."123456789"].map(digit)}
        {word(!several ? "no_sound" : begun ? "next" : "skip")}
        {digit("0")}
        {word(several ? "no_value" : "pulse")}
      </div>
      <div class="pad-words">
        {word("delete")}
        {word("undo")}
        {word(latest)}
        {word(several ? "pulse" : "above_gauge")}
      </div>
      <button type="button" class="button act key add" onClick={onAdd}>
        {say("pad-add")}
      </button>
    </div>
  );
}
