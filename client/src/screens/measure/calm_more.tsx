/* The rest of *Calm*, folded to a line that says what was noted. Opened, place and owner stand there to be answered by one tap, and all
   that is asked more rarely is a line of its own, with what was noted of it. Nothing is compulsory. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Checks } from "../../parts/checks";
import { Choices } from "../../parts/choices";
import { kebab } from "../../parts/word_ids";
import { ageFacts } from "../animal/patient_facts";
import { CIRCUMSTANCES, noneOfThem, toggled } from "./circumstances";
import { DrugsOnBoard } from "./drugs_on_board";
import { partOf, withField, withPlain } from "./fields";
import type { Keeping } from "./keeping";
import { notedMore, type MoreQuestion } from "./more_noted";
import { changed, type Open } from "./open";
import { problemsToShow } from "./part_problems";
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
    <fieldset class="yes-no">
      <legend>{say("field-owner")}</legend>
      <div class="yes-no-keys">
        {[true, false].map((value) => (
          <label class="choice" key={String(value)}>
            <input
              type="radio"
              name="owner"
              value={String(value)}
              checked={isThere === value}
              onChange={() => keeping.act((head) => changed(head, "field-owner", ["measurement", "owner_present"], value))}
            />
            <span>{say(value ? "owner-yes" : "owner-no")}</span>
          </label>
        ))}
      </div>
    </fieldset>
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

/** What is asked more rarely; a line by itself is called shorter than its question. */
const RARE: Partial<Record<MoreQuestion, string>> = {
  circumstances: "line-circumstances", rhythm: "field-rhythm", drugs: "field-drugs", treatment: "line-treatment", age: "field-age", rest: "line-rest",
};

function Asked({ question, open, keeping }: Props & { question: MoreQuestion }): JSX.Element | null {
  if (question === "circumstances") return <Happened keeping={keeping} />;
  if (question === "rhythm") return <Question keeping={keeping} field="rhythm" answers={["regular", "irregular"]} />;
  if (question === "drugs") return <DrugsOnBoard keeping={keeping} />;
  if (question === "treatment") return <Question keeping={keeping} field="treatment" answers={["none", "started", "changed", "unchanged"]} />;
  return question === "age" ? <Age open={open} keeping={keeping} /> : <Typed open={open} keeping={keeping} field="rest" />;
}

/** One of them: a line with its answer, which a tap opens and closes. Text that cannot be read is never folded away. */
function RareLine({ question, label, open, keeping }: Props & { question: MoreQuestion; label: string }): JSX.Element {
  const fold = `${FOLD}_${question}`;
  const isWrong = problemsToShow(open).some(({ field }) => field === question);
  const isOpen = isWrong || keeping.head().texts[fold] === "yes";
  const turn = (): void => {
    void keeping.act((head) => withPlain(head, ["texts", fold], isOpen ? "" : "yes"));
  };
  return (
    <div class={isOpen ? "asked open" : "asked"}>
      <button type="button" class="line" aria-expanded={isOpen} onClick={turn}>
        <span class="line-label">{say(label)}</span> <strong class="line-answer">{notedMore(open, question)}</strong>
      </button>
      {isOpen && <Asked question={question} open={open} keeping={keeping} />}
    </div>
  );
}

function Opened({ open, keeping }: Props): JSX.Element {
  return (
    <>
      <Question keeping={keeping} field="place" answers={["clinic", "home", "shelter", "partner", "other"]} />
      <Owner keeping={keeping} />
      <div class="stack">
        {(Object.entries(RARE) as [MoreQuestion, string][]).map(([question, label]) => (
          <RareLine key={question} question={question} label={label} open={open} keeping={keeping} />
        ))}
      </div>
    </>
  );
}

export function CalmMore({ open, keeping }: Props): JSX.Element {
  const isOpen = keeping.head().texts[FOLD] === "yes" || problemsToShow(open).some(({ field }) => partOf(field) === "calm" && field !== "hours");
  const turn = (): void => {
    void keeping.act((head) => withPlain(head, ["texts", FOLD], isOpen ? "" : "yes"));
  };
  return (
    <>
      <div class="more-box">
        <button type="button" class="fold calm-more" aria-expanded={isOpen} aria-describedby={isOpen ? undefined : "more-noted"} onClick={turn}>
          <strong>{say("calm-more")}</strong>
        </button>
        {!isOpen && <span class="small" id="more-noted">{moreLine(open)}</span>}
      </div>
      {isOpen && <Opened open={open} keeping={keeping} />}
    </>
  );
}
