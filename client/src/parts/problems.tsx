/* What is wrong on a form: a summary on top that takes the focus, with links to the fields, and the same words beside each.
   Must not be used for what the person cannot mend (no network, a server that is down). */
import { signal } from "@preact/signals";
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { say } from "../contract/words";

/** A field's id in the page and the whole sentence. */
export interface Problem {
  field: string;
  sentence: string;
}

interface Props {
  problems: readonly Problem[];
  /** Where problems are looked for at each key: what changes when they are asked for or are others, and at no other key. */
  asked?: unknown;
}

/** How many summaries stand on the screen just now: the window's title tells of them. */
export const summariesShown = signal(0);

/** The summary; takes the focus each time the problems change. Nothing is drawn without one. */
export function Problems({ problems, asked = problems }: Props): JSX.Element | null {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (problems.length > 0) box.current?.focus(); // and not at every drawing: whoever mends a field types on in it
  }, [asked]);
  const isShown = problems.length > 0;
  useEffect(() => {
    if (!isShown) return undefined;
    summariesShown.value = summariesShown.peek() + 1;
    return () => {
      summariesShown.value = summariesShown.peek() - 1;
    };
  }, [isShown]);
  if (!isShown) return null;
  return (
    <div ref={box} class="note" role="alert" tabIndex={-1}>
      <h2>{say("problem-title")}</h2>
      <ul class="stack">
        {problems.map(({ field, sentence }) => (
          <li key={field}>
            <button type="button" class="row" onClick={() => document.getElementById(field)?.focus()}>
              {sentence}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The same sentence beside the field, tied to it by id `<field>-wrong`. */
export function Wrong({ field, problems }: { field: string; problems: readonly Problem[] }): JSX.Element | null {
  const problem = problems.find((one) => one.field === field);
  return problem ? (
    <p class="wrong" id={`${field}-wrong`}>
      {problem.sentence}
    </p>
  ) : null;
}
