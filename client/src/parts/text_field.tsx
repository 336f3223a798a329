/* A labelled text field of the open measurement: what is typed is kept before it is painted, what was understood is said beside. */
import type { JSX } from "preact";
import { KeptInput } from "./kept_input";
import { Wrong, type Problem } from "./problems";

interface Props {
  id: string;
  label: string;
  hint?: string;
  echo?: string;
  text: string;
  newest: () => string;
  mode: "decimal" | "numeric" | "text";
  problems: readonly Problem[];
  onText: (text: string) => void;
  onEnter?: () => void;
}

export function TextField({ id, label, hint, echo, problems, ...input }: Props): JSX.Element {
  const wrong = problems.some((problem) => problem.field === id);
  const described = [hint && `${id}-hint`, echo && `${id}-echo`, wrong && `${id}-wrong`].filter(Boolean).join(" ");
  return (
    <div class="field" data-wrong={String(wrong)}>
      <label for={id}>{label}</label>
      {hint && (
        <p class="small quiet" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <Wrong field={id} problems={problems} />
      <div class={echo ? "with-echo" : undefined}>
        <KeptInput id={id} describedBy={described || undefined} wrong={wrong} {...input} />
        {echo && (
          <output class="echo" id={`${id}-echo`} for={id}>
            {echo}
          </output>
        )}
      </div>
    </div>
  );
}
