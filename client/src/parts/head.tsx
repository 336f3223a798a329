/* The top of every screen: where we are, how much is not sent (0 is said too), and the look. Must not know of screens. */
import type { ComponentChildren, JSX } from "preact";
import { say } from "../contract/words";
import { look, nextLook } from "./look";

interface Props {
  /** Entries not sent; undefined while nobody is signed in. */
  unsent: number | undefined;
  children?: ComponentChildren;
}

export function Head({ unsent, children }: Props): JSX.Element {
  return (
    <header class="head">
      <div class="head-place">{children}</div>
      {unsent !== undefined && (
        <a class="link" href="#/outbox" aria-label={say("outbox-link", { n: unsent })}>
          {say("unsent-count", { n: unsent })}
        </a>
      )}
      <button type="button" class="button small" aria-label={say("look-change", { look: say(`look-${look.value}`) })} onClick={nextLook}>
        {say(`look-${look.value}`)}
      </button>
    </header>
  );
}
