/* Something to know, under a heading: open, or folded to its heading where the task comes first. Must not hide a trouble. */
import type { ComponentChildren, JSX } from "preact";

interface Props {
  /** Id of the heading in the page. */
  id: string;
  title: string;
  folded?: boolean | undefined;
  children: ComponentChildren;
}

/** A region named by its heading. */
export function Noted({ id, title, folded, children }: Props): JSX.Element {
  return (
    <section class={folded ? "noted" : "note stack"} aria-labelledby={id}>
      {folded ? (
        <details class="more fold">
          <summary>
            <h2 id={id}>{title}</h2>
          </summary>
          <div class="stack">{children}</div>
        </details>
      ) : (
        <>
          <h2 id={id}>{title}</h2>
          {children}
        </>
      )}
    </section>
  );
}
