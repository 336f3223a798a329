/* Set-up: what must be known about the animal and its calm before a cuff goes on. Each answer is one tap; nothing is compulsory. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { Choices } from "../parts/choices";
import { TextField } from "../parts/text_field";
import { DropDraft } from "./drop_draft";
import { Calming, State } from "./calming";
import { echoOf, nameOf, withField, withPlain, type FieldId } from "./fields";
import type { Keeping } from "./keeping";
import { changed, type Open } from "./open";
import { problemsToShow } from "./part_problems";
import { saying } from "./wording";

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
function Question({ keeping, field, answers }: Pick<Props, "keeping"> & { field: "species" | "demeanour" | "place" | "rhythm"; answers: readonly string[] }): JSX.Element {
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

/** A text field of the open measurement. */
export function Typed({ open, keeping, field, hint, mode = "decimal", onEnter }: Omit<Props, "onDone"> & {
  field: FieldId; hint?: string; mode?: "decimal" | "numeric"; onEnter?: () => void;
}): JSX.Element {
  const echoed = echoOf(field, open);
  return (
    <TextField
      id={field}
      label={say(nameOf(field))}
      hint={hint}
      echo={echoed && saying(echoed)}
      mode={mode}
      text={open.texts[field] ?? ""}
      newest={() => keeping.head().texts[field] ?? ""}
      problems={problemsToShow(open)}
      onText={(text) => keeping.act((head) => withField(head, field, text))}
      onEnter={onEnter}
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

/** The first part. *Next* folds it; text that cannot be read is named first. */
export function SetupPart({ open, keeping, onDone }: Props): JSX.Element {
  return (
    <div class="part">
      {open.name === undefined && <Question keeping={keeping} field="species" answers={["dog", "cat"]} />}
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
        {say("setup-next")}
      </button>
      <DropDraft open={open} />
    </div>
  );
}
