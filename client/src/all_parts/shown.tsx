/* One part in one state, with its name above it. The name is the part's in the code and no sentence for anybody but us. */
import type { ComponentChildren, JSX } from "preact";

export function Shown({ name, children }: { name: string; children: ComponentChildren }): JSX.Element {
  return (
    <section class="stack" aria-label={name} data-part={name}>
      <h2>{name}</h2>
      {children}
    </section>
  );
}
