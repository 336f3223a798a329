/* Ready?: may this animal be measured now. What is known of it first, then four answers, each one tap. Must not keep anybody from
   measuring: it asks, says what comes first, and records. */
import type { JSX } from "preact";
import "../../contract/calm_words";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { Guide } from "../../parts/guide";
import { kebab } from "../../parts/word_ids";
import { patientOf } from "../animal/animals";
import { Glance } from "../animal/patient_glance";
import { thePhone } from "../place";
import { dayOf } from "../animal/sites_not_used";
import { useRead } from "../use_read";
import { DropDraft } from "./drop_draft";
import { HelpFirst } from "./help_first";
import type { Keeping } from "./keeping";
import { WhyNotToday } from "./not_today";
import { changed, setNow, type Open } from "./open";
import { asksNotToday } from "./outcome";
import { answered, helpFirst, helpNow, isReady, QUESTIONS, type Question } from "./ready";

interface Props {
  open: Open;
  keeping: Keeping;
  onDone: () => void;
}

function YesNo({ keeping, question }: { keeping: Keeping; question: Question }): JSX.Element {
  const value = keeping.head().measurement.ready?.[question];
  return (
    <fieldset class="yes-no">
      <legend>{say(`ready-${kebab(question)}`)}</legend>
      <div class="yes-no-keys">
        {[true, false].map((isYes) => (
          <label class="choice" key={String(isYes)}>
            <input
              type="radio"
              name={`ready-${question}`}
              value={String(isYes)}
              checked={value === isYes}
              onChange={() => keeping.act((head) => answered(head, question, isYes))}
            />
            <span>{say(isYes ? "ready-yes" : "ready-no")}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

const SAFE_HINTS = [1, 2, 3, 4] as const;

/** What to do about a "no" that leaves measuring open; said below all four, so that no key moves from under a thumb. */
function Then({ open, question }: { open: Open; question: Question }): JSX.Element | null {
  if (open.measurement.ready?.[question] !== false) return null;
  if (question === "no_pain") return <p class="note" role="status">{say("ready-pain-then")}</p>;
  if (question !== "safe_to_handle") return <p class="note" role="status">{say("help-first-noted")}</p>;
  return (
    <div class="note" role="status">
      <p>{say("ready-safe-then")}</p>
      <ul class="plain-list">{SAFE_HINTS.map((n) => <li key={n}>{say(`ready-safe-${n}`)}</li>)}</ul>
    </div>
  );
}

/** The signs that put help before any question (row 0), in sight of whoever opens the visit. */
function SignsNow({ keeping }: { keeping: Keeping }): JSX.Element {
  return (
    <div class="signs-now">
      <p class="small">{say("ready-signs")}</p>
      <button type="button" class="button" onClick={() => keeping.act(helpNow)}>
        {say("ready-signs-now")}
      </button>
    </div>
  );
}

/** What to know of a known animal before a hand goes near it. */
function Known({ id }: { id: string }): JSX.Element | null {
  const card = useRead(() => thePhone().patients(), [id])?.find((one) => one.id === id);
  return card ? <Glance patient={patientOf(card)} day={dayOf(Date.now())} /> : null;
}

function Species({ keeping }: { keeping: Keeping }): JSX.Element {
  return (
    <Choices
      name="species"
      label={say("field-species")}
      answers={(["dog", "cat"] as const).map((value) => ({ value, label: say(`species-${value}`) }))}
      value={keeping.head().measurement.species}
      onChoose={(value) => keeping.act((head) => changed(head, "field-species", ["measurement", "species"], value))}
    />
  );
}

/** The first part: its questions, or what comes before them. The fourth yes opens *Calm* by itself. */
export function ReadyPart({ open, keeping, onDone }: Props): JSX.Element {
  if (open.sheet?.kind === "not_today") return <WhyNotToday open={open} keeping={keeping} />;
  if (helpFirst(open)) return <HelpFirst open={open} keeping={keeping} />;
  const { patient, species } = open.measurement;
  return (
    <div class="part">
      {patient && <Known id={patient} />}
      {open.name === undefined && <Species keeping={keeping} />}
      <SignsNow keeping={keeping} />
      <div class="stack four">
        {QUESTIONS.map((question) => <YesNo key={question} keeping={keeping} question={question} />)}
      </div>
      {QUESTIONS.map((question) => <Then key={question} open={open} question={question} />)}
      <div class="side-by-side">
        <button type="button" class="button" onClick={() => keeping.act(asksNotToday)}>
          {say("not-today")}
        </button>
        <button type="button" class={isReady(open) ? "button act" : "button"} onClick={onDone}>
          {say("ready-next")}
        </button>
      </div>
      <Guide step="ready" species={species} method={setNow(open).method} />
      <DropDraft open={open} />
    </div>
  );
}
