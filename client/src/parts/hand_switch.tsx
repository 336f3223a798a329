/* One tap to lay the keys out for the other hand. Its name says which hand it is now; must not know of screens. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { chooseHand, hand } from "./hand";

export function HandSwitch(): JSX.Element {
  const now = hand.value;
  const other = now === "left" ? "right" : "left";
  return (
    <button type="button" class="button small" aria-label={say("hand-change", { hand: say(`hand-${now}`) })} onClick={() => chooseHand(other)}>
      {say(`hand-${now}`)}
    </button>
  );
}
