/* The fields of a kept form: text, a question with a few answers, and what keeps the form from the disk. Must not know what is asked. */
import type { JSX } from "preact";
import { hasWords, say } from "../contract/words";
import { Choices, type Answer } from "../parts/choices";
import { Wrong, type Problem } from "../parts/problems";
import { TextField } from "../parts/text_field";
import { kebab } from "../parts/word_ids";
import type { KeptForm } from "./kept_form";

interface FieldProps {
  form: KeptForm;
  /** Name of the field in the form. */
  field: string;
  /** Id in the page, where the field's name alone would stand there twice. */
  id?: string;
  label: string;
  problems: readonly Problem[];
}

interface TextProps extends FieldProps {
  hint?: string;
  echo?: string;
  mode?: "text" | "decimal" | "numeric";
}

/** A line of text; problems name it by its id. */
export function FormText({ form, field, id = field, label, hint, echo, mode = "text", problems }: TextProps): JSX.Element {
  return (
    <TextField
      id={id}
      label={label}
      hint={hint}
      echo={echo}
      mode={mode}
      text={form.shown.texts[field] ?? ""}
      newest={() => form.head().texts[field] ?? ""}
      problems={problems}
      onText={(text) => form.type(field, text)}
    />
  );
}

interface ChoiceProps<T extends string> extends FieldProps {
  answers: readonly Answer<T>[];
  narrow?: boolean;
}

/** A question with a few answers; problems name it by its id and can lead to it. */
export function FormChoices<T extends string>({ form, field, id = field, label, answers, narrow, problems }: ChoiceProps<T>): JSX.Element {
  return (
    <div id={id} tabIndex={-1}>
      <Choices
        name={id}
        label={label}
        answers={answers}
        value={form.shown.chosen[field] as T | undefined}
        narrow={narrow}
        wrong={<Wrong field={id} problems={problems} />}
        onChoose={(value) => form.choose(field, value)}
      />
    </div>
  );
}

/** Said while what was typed is not on the disk; nothing otherwise. */
export function NotKept({ form }: { form: KeptForm }): JSX.Element | null {
  if (!form.trouble) return null;
  const word = `storage-${kebab(form.trouble)}`;
  return (
    <p class="note" role="alert">
      {say(hasWords(word) ? word : "kept-not")}
    </p>
  );
}
