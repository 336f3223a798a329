/* A new animal in at most four taps: species, name or mark, save. All else about it can be told later, on its own page.
   What is typed is kept as it is typed; filed at once, so that the animal is on this phone for good. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { Problems, type Problem } from "../../parts/problems";
import { animalProblems, speciesAnswers, type Species } from "./animal_problems";
import { FormChoices, FormText, NotKept } from "../form_fields";
import { useKeptForm, type KeptForm } from "../kept_form";
import { oneAtATime } from "../one_at_a_time";
import { Page } from "../page";
import { StorageProblem, storageWord } from "../phone/storage_problem";

interface Body {
  species: Species;
  name: string;
  mark?: string;
}

interface Props {
  /** What the form is about, so that a killed tab finds it where it was: `new`, or `new/<measurement>` at *File*. */
  about: string;
  /** What was searched for and not found, offered as the name. */
  name: string;
  species?: Species;
  /** With the new animal's id, or without when it was given up. */
  onDone: (id?: string, body?: Body) => void;
}

/** A page of its own, from the round. */
export function AddAnimal(props: Props): JSX.Element {
  const [wrong, setWrong] = useState(false);
  return (
    <Page title={say("add-animal-title")} wrong={wrong}>
      <AddAnimalForm {...props} onWrong={setWrong} />
    </Page>
  );
}

type FormProps = Props & { onWrong?: (wrong: boolean) => void };

/** The form, wherever it stands. */
export function AddAnimalForm(props: FormProps): JSX.Element | null {
  const { about, name, species } = props;
  const form = useKeptForm(about, { texts: { name }, chosen: species ? { species } : {} });
  return form ? <Fields {...props} form={form} /> : null;
}

function Fields({ form, onDone, onWrong }: FormProps & { form: KeptForm }): JSX.Element {
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const busy = useRef(false);

  async function save(): Promise<void> {
    const { texts, chosen } = form.head();
    const species = chosen["species"] as Species | undefined;
    const [name, mark] = [(texts["name"] ?? "").trim(), (texts["mark"] ?? "").trim()];
    const found = animalProblems(species, name, mark);
    setProblems(found);
    onWrong?.(found.length > 0);
    if (found.length > 0 || !species) return;
    const body = { species, name: name || mark, ...(mark ? { mark } : {}) };
    onDone(await form.file({ kind: "patient", body }), body);
  }

  return (
    <>
      <Problems problems={problems} />
      <form class="stack" noValidate onSubmit={(event) => { event.preventDefault(); oneAtATime(busy, save).catch((failure: unknown) => setTrouble(storageWord(failure))); }}>
        <FormChoices form={form} field="species" label={say("add-animal-species")} answers={speciesAnswers()} problems={problems} />
        <FormText form={form} field="name" label={say("add-animal-name")} problems={problems} />
        <FormText form={form} field="mark" label={say("add-animal-mark")} hint={say("add-animal-mark-hint")} problems={problems} />
        <NotKept form={form} />
        <StorageProblem word={trouble} />
        <button type="submit" class="button act wide">
          {say("add-animal-save")}
        </button>
        <button type="button" class="button wide" onClick={() => void form.drop().then(() => onDone(), () => onDone())}>
          {say("cancel")}
        </button>
      </form>
    </>
  );
}
