/* Calm: how the animal is and what it went through, before a cuff goes on. Each answer is one tap; nothing is compulsory. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { DropDraft } from "./drop_draft";
import { Calming, State } from "./calming";
import { withField, withPlain } from "./fields";
import type { Keeping } from "./keeping";
import { changed, type Open } from "./open";
import { Typed } from "./typed";

interface Props {
  open: Open;
  keeping: Keeping;
  onDone: () => void;
}

const AGE_UNITS = ["years", "months", "not-known"] as const;

/**
 * One question of the measurement itself, answered by a word of the wire document. The browser marks a radio button at the
 * tap itself: it follows the newest state, or a write that ends meanwhile would take the mark away again for a moment.
 */
function Question({ keeping, field, answers }: Pick<Props, "keeping"> & { field: "demeanour" | "place" | "rhythm"; answers: readonly string[] }): JSX.Element {
  return (
    <Choices
      name={field}
      label={say(`field-${field}`)}
      answers={answers.map((value) => ({ value, label: say(`${field}-${value}`) }))}
      value={keeping.head().measurement[field]}
      onChoose={(value) => keeping.act((head) => changed(head, `field-${field}`, ["measurement", field], value))}
    />
  );
}

function Age({ open, keeping }: Omit<Props, "onDone">): JSX.Element {
  const head = keeping.head();
  const unit = head.texts["age_unit"] ?? (head.measurement.age_months === undefined ? "not-known" : "months");
  return (
    <>
      <Choices
        name="age-unit"
        label={say("field-age-unit")}
        answers={AGE_UNITS.map((value) => ({ value, label: say(`age-${value}`) }))}
        value={unit as (typeof AGE_UNITS)[number]}
        onChoose={(value) => keeping.act((head) => withAgeUnit(head, value))}
      />
      {unit !== "not-known" && <Typed open={open} keeping={keeping} field="age" />}
    </>
  );
}

function withAgeUnit(open: Open, unit: string): Open {
  const texts: Open["texts"] = { ...open.texts, age_unit: unit };
  if (unit === "not-known") return withPlain({ ...open, texts: { ...texts, age: "" } }, ["measurement", "age_months"], undefined);
  return withField({ ...open, texts }, "age", texts["age"] ?? "");
}

/** The second part. *Next* folds it; text that cannot be read is named first. */
export function CalmPart({ open, keeping, onDone }: Props): JSX.Element {
  return (
    <div class="part">
      <Question keeping={keeping} field="demeanour" answers={["sleepy", "calm", "tense", "fighting"]} />
      <State keeping={keeping} />
      <Calming keeping={keeping}>
        <Typed open={open} keeping={keeping} field="hours" mode="numeric" />
      </Calming>
      <Typed open={open} keeping={keeping} field="rest" />
      <Question keeping={keeping} field="place" answers={["clinic", "home", "shelter", "partner", "other"]} />
      <Question keeping={keeping} field="rhythm" answers={["regular", "irregular"]} />
      <Age open={open} keeping={keeping} />
      <button type="button" class="button act wide" onClick={onDone}>
        {say("calm-next")}
      </button>
      <DropDraft open={open} />
    </div>
  );
}
