/* How an animal takes handling, in four described choices, the trick that worked, and whether it bruises. Each change is a whole
   new wording of the animal. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { Patient1 as Patient } from "../../contract/wire_types";
import type { PatientCard } from "../../offline/journal";
import { Problems, type Problem } from "../../parts/problems";
import { handlingWord, patientOf } from "./animals";
import { cardFiled, giveUp } from "./form_over";
import { FormChoices, FormText, NotKept } from "../form_fields";
import type { Filled } from "../forms_begun";
import { useKeptForm, type KeptForm } from "../kept_form";
import { settled } from "./meanwhile";
import { amended } from "./patient_facts";
import { Meanwhile, meanwhileProblems, newestOf, overNow, type ToldFact } from "./patient_meanwhile";
import { oneAtATime } from "../one_at_a_time";
import { StorageProblem, storageWord } from "../phone/storage_problem";

const GRADES = ["0", "1", "2", "3"] as const;
const TRICK_MOST = 120;

interface Props {
  card: PatientCard;
  onSaved: (filed: PatientCard) => void;
  onGivenUp: () => void;
}

/** What stands in the form of an animal nobody began to change. */
export function handlingOf({ handling, bruises }: Patient): Filled {
  return {
    texts: { trick: handling?.trick ?? "" },
    chosen: { ...(handling ? { grade: String(handling.grade) } : {}), bruises: bruises ? "yes" : "no" },
  };
}

/** The facts of the form, as they are told when two people changed them. */
function handlingFacts(): ToldFact[] {
  return [
    { fact: ["grade"], label: say("handling-ask"), told: ({ chosen: { grade } }) => (grade ? handlingWord(Number(grade)) : "") },
    { fact: ["trick"], label: say("handling-trick"), told: ({ texts }) => texts["trick"] ?? "" },
    { fact: ["bruises"], label: say("bruises-ask"), told: ({ chosen: { bruises } }) => say(`bruises-${bruises ?? "no"}`) },
  ];
}

export function HandlingForm(props: Props): JSX.Element | null {
  const { card } = props;
  const now = handlingOf(patientOf(card));
  const form = useKeptForm(`handling/${card.id}`, now);
  return form ? <Fields {...props} form={overNow(form, now, handlingFacts())} /> : null;
}

function problemsOf(grade: string | undefined, trick: string): Problem[] {
  return [
    ...(trick && !grade ? [{ field: "grade", sentence: say("ask-handling") }] : []),
    ...([...trick].length > TRICK_MOST ? [{ field: "trick", sentence: say("ask-trick-long") }] : []),
  ];
}

function Fields({ form, card, onSaved, onGivenUp }: Props & { form: KeptForm }): JSX.Element {
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const busy = useRef(false);

  const told = handlingFacts();

  async function save(): Promise<void> {
    const newest = await newestOf(card);
    const now = handlingOf(patientOf(newest));
    const head = settled(form.head(), now, told.map(({ fact }) => fact));
    const [grade, trick] = [head.chosen["grade"], (head.texts["trick"] ?? "").trim()];
    const found = [...meanwhileProblems(head, now, told), ...problemsOf(grade, trick)];
    setProblems(found);
    if (found.length > 0) return;
    const handling = grade === undefined ? undefined : { grade: Number(grade), ...(trick ? { trick } : {}) };
    const parts = amended(newest, { handling, bruises: head.chosen["bruises"] === "yes" ? true : undefined });
    onSaved(cardFiled(newest, parts, await form.file(parts, true)));
  }

  return (
    <form class="stack" noValidate onSubmit={(event) => { event.preventDefault(); oneAtATime(busy, save).catch((failure: unknown) => setTrouble(storageWord(failure))); }}>
      <Problems problems={problems} />
      <Meanwhile form={form} now={handlingOf(patientOf(card))} told={told} />
      <FormChoices form={form} field="grade" label={say("handling-ask")} answers={GRADES.map((value) => ({ value, label: handlingWord(Number(value)) }))} problems={problems} />
      <FormText form={form} field="trick" label={say("handling-trick")} hint={say("handling-trick-hint")} problems={problems} />
      <FormChoices form={form} field="bruises" label={say("bruises-ask")} answers={(["no", "yes"] as const).map((value) => ({ value, label: say(`bruises-${value}`) }))} problems={problems} />
      <NotKept form={form} />
      <StorageProblem word={trouble} />
      <button type="submit" class="button act wide">{say("handling-save")}</button>
      <button type="button" class="button wide" onClick={() => void giveUp(form, onGivenUp, (failure) => setTrouble(storageWord(failure)))}>{say("cancel")}</button>
    </form>
  );
}
