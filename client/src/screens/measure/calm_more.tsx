/* The rest of *Calm*, folded to a line that says what was noted: place, owner, what happened before, drugs, rhythm, treatment, age,
   and the quiet time typed by hand. Each answer one tap; nothing is compulsory. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Checks } from "../../parts/checks";
import { Choices } from "../../parts/choices";
import { kebab } from "../../parts/word_ids";
import { ageFacts } from "../animal/patient_facts";
import { CIRCUMSTANCES, noneOfThem, toggled } from "./circumstances";
import { DrugsOnBoard } from "./drugs_on_board";
import { withField, withPlain } from "./fields";
import type { Keeping } from "./keeping";
import { changed, type Open } from "./open";
import { moreLine } from "./summary";
import { Typed } from "./typed";

interface Props {
  open: Open;
  keeping: Keeping;
}

/** The fold is open: kept with the draft. */
const FOLD = "calm_more";
const AGE_UNITS = ["years", "months", "not-known"] as const;

interface Asked {
  keeping: Keeping;
  field: "place" | "rhythm" | "treatment";
  answers: readonly string[];
}

/**
 * One question of the measurement itself, answered by a word of the wire document. The browser marks a radio button at the
 * tap itself: it follows the newest state, or a write that ends meanwhile would take the mark away again for a moment.
 */
function Question({ keeping, field, answers }: Asked): JSX.Element {
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

function Owner({ keeping }: { keeping: Keeping }): JSX.Element {
  const { owner_present: isThere } = keeping.head().measurement;
  return (
    <Choices
      name="owner"
      label={say("field-owner")}
      answers={(["yes", "no"] as const).map((value) => ({ value, label: say(`owner-${value}`) }))}
      value={isThere === undefined ? undefined : isThere ? "yes" : "no"}
      onChoose={(value) => keeping.act((head) => changed(head, "field-owner", ["measurement", "owner_present"], value === "yes"))}
    />
  );
}

function Happened({ keeping }: { keeping: Keeping }): JSX.Element {
  return (
    <Checks
      name="circumstances"
      label={say("field-circumstances")}
      answers={CIRCUMSTANCES.map((value) => ({ value, label: say(`circumstance-${kebab(value)}`) }))}
      none={say("circumstance-none")}
      values={keeping.head().measurement.circumstances}
      onToggle={(value) => keeping.act((head) => toggled(head, value))}
      onNone={() => keeping.act(noneOfThem)}
    />
  );
}

function Age({ open, keeping }: Props): JSX.Element {
  const { texts, measurement: { age_months } } = keeping.head();
  if (age_months !== undefined && texts["age_unit"] === undefined && texts["age"] === undefined) {
    const { n, unit } = ageFacts(age_months);
    return <p>{say("age-from-birth", { n, unit })}</p>;
  }
  const unit = texts["age_unit"] ?? "not-known";
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

/** Where the last visit was, as an offer: it becomes an answer by a person's tap alone. */
export function PlaceAsLast({ keeping }: { keeping: Keeping }): JSX.Element | null {
  const { place, previous } = keeping.head().measurement;
  const last = previous?.place;
  if (place !== undefined || last === undefined) return null;
  return (
    <button type="button" class="button wide" onClick={() => keeping.act((head) => changed(head, "field-place", ["measurement", "place"], last))}>
      {say("place-as-last", { place: say(`place-${last}`) })}
    </button>
  );
}

export function CalmMore({ open, keeping }: Props): JSX.Element {
  const isOpen = keeping.head().texts[FOLD] === "yes";
  const turn = (): void => {
    void keeping.act((head) => withPlain(head, ["texts", FOLD], isOpen ? "" : "yes"));
  };
  return (
    <>
      <div class="fold-box">
        <button type="button" class="fold calm-more" aria-expanded={isOpen} aria-describedby={isOpen ? undefined : "more-noted"} onClick={turn}>
          <strong>{say("calm-more")}</strong>
        </button>
        {!isOpen && <span class="small" id="more-noted">{moreLine(open)}</span>}
      </div>
      {isOpen && (
        <>
          <Question keeping={keeping} field="place" answers={["clinic", "home", "shelter", "partner", "other"]} />
          <Owner keeping={keeping} />
          <Happened keeping={keeping} />
          <Question keeping={keeping} field="rhythm" answers={["regular", "irregular"]} />
          <DrugsOnBoard keeping={keeping} />
          <Question keeping={keeping} field="treatment" answers={["none", "started", "changed", "unchanged"]} />
          <Age open={open} keeping={keeping} />
          <Typed open={open} keeping={keeping} field="rest" />
        </>
      )}
    </>
  );
}
