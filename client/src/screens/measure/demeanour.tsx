/* How the animal is just now, in four grades, each told by what is seen. One tap. Must not grade by itself. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Keeping } from "./keeping";
import { changed } from "./open";

const GRADES = ["sleepy", "calm", "tense", "fighting"] as const;

/** The word is the name of a choice, and what is seen describes it. */
export function Demeanour({ keeping }: { keeping: Keeping }): JSX.Element {
  const { demeanour } = keeping.head().measurement;
  return (
    <fieldset class="choices">
      <legend>{say("field-demeanour")}</legend>
      <div class="choice-row pairs">
        {GRADES.map((grade) => (
          <label class="choice told" key={grade}>
            <input
              type="radio"
              name="demeanour"
              value={grade}
              checked={demeanour === grade}
              aria-labelledby={`demeanour-${grade}`}
              aria-describedby={`demeanour-${grade}-told`}
              onChange={() => keeping.act((head) => changed(head, "field-demeanour", ["measurement", "demeanour"], grade))}
            />
            <span>
              <strong id={`demeanour-${grade}`}>{say(`demeanour-${grade}`)}</strong>
              <span class="small" id={`demeanour-${grade}-told`}>{say(`demeanour-${grade}-told`)}</span>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
