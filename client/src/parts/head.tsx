/* The top of every screen: where we are, how much is not sent (0 is said too), help, and the look; in training the word for it.
   Help stands in the same place on every screen (WCAG 2.2, 3.2.6). Must not know of screens. */
import type { ComponentChildren, JSX } from "preact";
import { say } from "../contract/words";
import { look, nextLook } from "./look";
import { inTraining } from "./training_ground";

interface Props {
  /** Entries not sent; undefined while nobody is signed in. */
  unsent: number | undefined;
  /** The topic help opens at; without one it opens at its list. */
  help?: string | undefined;
  /** What needs a line of its own under all of it. */
  below?: string | undefined;
  children?: ComponentChildren;
}

export function Head({ unsent, help, below, children }: Props): JSX.Element {
  return (
    <header class="head">
      {inTraining.value && <p class="training-word">{say("training-word")}</p>}
      <div class="head-place">{children}</div>
      {unsent !== undefined && (
        <a class="link" href="#/outbox" aria-label={say("outbox-link", { n: unsent })}>
          {say("unsent-count", { n: unsent })}
        </a>
      )}
      <a class="link" href={help ? `#/help/${help}` : "#/help"}>
        {say("help-title")}
      </a>
      <button type="button" class="button small" aria-label={say("look-change", { look: say(`look-${look.value}`) })} onClick={nextLook}>
        {say(`look-${look.value}`)}
      </button>
      {below && <p class="head-below small quiet">{below}</p>}
    </header>
  );
}
