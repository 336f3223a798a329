/* All that tells an animal from the next one, to be told later or put right: one form, one whole new wording.
   Where name, species, mark or an identifier changes a reason is asked, since others may know the animal by the old ones. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { Problems, type Problem } from "../../parts/problems";
import { kebab } from "../../parts/word_ids";
import { speciesAnswers } from "./animal_problems";
import { patientOf } from "./animals";
import { giveUp } from "./form_over";
import { FormChoices, FormText, NotKept } from "../form_fields";
import { useKeptForm, type KeptForm } from "../kept_form";
import { settled } from "./meanwhile";
import { amended, changesIdentity, chipWarning } from "./patient_facts";
import { Meanwhile, meanwhileProblems, newestOf, overNow } from "./patient_meanwhile";
import { firstOf, IDENTIFIER_KINDS, IDENTIFIERS_MOST, readWho, SEXES } from "./patient_who";
import { whoFacts } from "./patient_who_facts";
import { oneAtATime } from "../one_at_a_time";
import { StorageProblem, storageWord } from "../phone/storage_problem";

interface Props {
  card: PatientCard;
  onDone: () => void;
}

export function WhoForm({ card, onDone }: Props): JSX.Element | null {
  const now = firstOf(patientOf(card));
  const form = useKeptForm(`who/${card.id}`, now);
  return form ? <Fields form={overNow(form, now, whoFacts())} card={card} onDone={onDone} /> : null;
}

function Fields({ form, card, onDone }: Props & { form: KeptForm }): JSX.Element {
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const busy = useRef(false);
  const [before, told] = [patientOf(card), whoFacts()];
  const asksReason = changesIdentity(before, readWho(before, form.shown, Date.now()).patient);

  async function save(): Promise<void> {
    const newest = await newestOf(card);
    const [stands, now] = [patientOf(newest), firstOf(patientOf(newest))];
    const head = settled(form.head(), now, told.map(({ fact }) => fact));
    const { patient, problems: wrong } = readWho(stands, head, Date.now());
    const found = [...meanwhileProblems(head, now, told), ...wrong];
    setProblems(found);
    if (found.length > 0) return;
    await form.file(amended(newest, patient, changesIdentity(stands, patient) ? head.texts["reason"]?.trim() : undefined));
    onDone();
  }

  return (
    <form class="stack" noValidate onSubmit={(event) => { event.preventDefault(); oneAtATime(busy, save).catch((failure: unknown) => setTrouble(storageWord(failure))); }}>
      <Problems problems={problems} />
      <Meanwhile form={form} now={firstOf(before)} told={told} />
      <FormText form={form} field="name" label={say("add-animal-name")} problems={problems} />
      <FormText form={form} field="mark" label={say("add-animal-mark")} hint={say("add-animal-mark-hint")} problems={problems} />
      <FormChoices form={form} field="species" label={say("add-animal-species")} answers={speciesAnswers()} problems={problems} />
      <Identifiers form={form} problems={problems} />
      <Birth form={form} problems={problems} />
      <FormChoices form={form} field="sex" label={say("field-sex")} answers={SEXES.map((value) => ({ value, label: say(`sex-${kebab(value)}`) }))} problems={problems} />
      <FormText form={form} field="breed" label={say("field-breed")} problems={problems} />
      {asksReason && <FormText form={form} field="reason" label={say("field-reason")} hint={say("field-reason-hint")} problems={problems} />}
      <NotKept form={form} />
      <StorageProblem word={trouble} />
      <button type="submit" class="button act wide">{say("who-save")}</button>
      <button type="button" class="button wide" onClick={() => void giveUp(form, onDone, (failure) => setTrouble(storageWord(failure)))}>{say("cancel")}</button>
    </form>
  );
}

interface PartProps {
  form: KeptForm;
  problems: readonly Problem[];
}

function Birth({ form, problems }: PartProps): JSX.Element {
  const as = form.shown.chosen["birth_as"] ?? "born";
  const answers = (["born", "years", "months"] as const).map((value) => ({ value, label: say(`birth-${value}`) }));
  return (
    <>
      <FormChoices form={form} field="birth_as" label={say("birth-ask")} answers={answers} problems={problems} />
      <FormText form={form} field="birth" label={say(`birth-${as}`)} hint={as === "born" ? say("birth-hint") : undefined} mode={as === "born" ? "text" : "decimal"} problems={problems} />
    </>
  );
}

/** Each with its kind; one left empty is taken away. */
function Identifiers({ form, problems }: PartProps): JSX.Element {
  const count = Number(form.shown.chosen["identifiers"] ?? "0");
  return (
    <fieldset class="stack">
      <legend>{say("identifiers-title")}</legend>
      {Array.from({ length: count }, (_, at) => <Identifier key={at} form={form} at={at} problems={problems} />)}
      {count < IDENTIFIERS_MOST && (
        <button type="button" class="button wide" onClick={() => form.choose("identifiers", String(count + 1))}>
          {say("identifier-add")}
        </button>
      )}
    </fieldset>
  );
}

function Identifier({ form, at, problems }: PartProps & { at: number }): JSX.Element {
  const [kind, text] = [form.shown.chosen[`kind_${at}`], form.shown.texts[`identifier_${at}`] ?? ""];
  const odd = kind === "chip" && text.trim() ? chipWarning(text) : undefined;
  const n = at + 1;
  return (
    <div class="stack">
      <FormChoices
        form={form} field={`kind_${at}`} label={say("identifier-kind", { n })}
        answers={IDENTIFIER_KINDS.map((value) => ({ value, label: say(`identifier-${kebab(value)}`) }))} problems={problems}
      />
      <FormText form={form} field={`identifier_${at}`} label={say("identifier-text", { n })} hint={n === 1 ? say("identifier-hint") : undefined} problems={problems} />
      {odd && <p role="status">{say(`chip-${odd}`)}</p>}
    </div>
  );
}
