/* One question of which several answers may hold at once, as check boxes; "none of these" is an answer too, and not the same as
   no answer. Must not decide anything. */
import type { JSX } from "preact";
import type { Answer } from "./choices";

interface Props<T extends string> {
  /** Name of the group within the page. */
  name: string;
  label: string;
  answers: readonly Answer<T>[];
  /** The word for "none of these". */
  none: string;
  /** What holds; empty when none does, undefined when nobody answered. */
  values: readonly T[] | undefined;
  onToggle: (value: T) => void;
  onNone: () => void;
}

function Box({ name, value, label, checked, onChange }: { name: string; value: string; label: string; checked: boolean; onChange: () => void }): JSX.Element {
  return (
    <label class="choice check">
      <input type="checkbox" name={name} value={value} checked={checked} onChange={onChange} />
      <span>{label}</span>
    </label>
  );
}

/** A fieldset named by its question. */
export function Checks<T extends string>({ name, label, answers, none, values, onToggle, onNone }: Props<T>): JSX.Element {
  return (
    <fieldset class="choices">
      <legend>{label}</legend>
      <div class="choice-row pairs">
        {answers.map(({ value, label: word }) => (
          <Box key={value} name={name} value={value} label={word} checked={values?.includes(value) ?? false} onChange={() => onToggle(value)} />
        ))}
        <Box name={name} value="none" label={none} checked={values?.length === 0} onChange={onNone} />
      </div>
    </fieldset>
  );
}
