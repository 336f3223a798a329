/* One question with a few answers, as radio buttons that fill their whole label. Must not decide anything. */
import type { ComponentChildren, JSX } from "preact";

export interface Answer<T extends string> {
  value: T;
  label: string;
}

interface Props<T extends string> {
  /** Name of the group within the page. */
  name: string;
  label: string;
  answers: readonly Answer<T>[];
  value: T | undefined;
  narrow?: boolean;
  /** What is wrong with the answer, said under the question as it is under the label of a field. */
  wrong?: ComponentChildren;
  onChoose: (value: T) => void;
}

/** Longest word that stands in a third of a narrow phone without being broken. */
const WORD_MOST = 9;

function hasLongWord(answers: readonly { label: string }[]): boolean {
  return answers.some(({ label }) => label.split(" ").some((word) => word.length > WORD_MOST));
}

/** A fieldset named by its question. */
export function Choices<T extends string>({ name, label, answers, value, narrow, wrong, onChoose }: Props<T>): JSX.Element {
  return (
    <fieldset class="choices">
      <legend>{label}</legend>
      {wrong}
      <div class={`choice-row ${narrow ? "narrow" : answers.length === 4 || hasLongWord(answers) ? "pairs" : ""}`}>
        {answers.map((answer) => (
          <label class="choice" key={answer.value}>
            <input
              type="radio"
              name={name}
              value={answer.value}
              checked={answer.value === value}
              onChange={() => onChoose(answer.value)}
            />
            <span>{answer.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
