/* A new animal: species, name, mark; two taps and the typing. Filed at once, so that it is on this phone for good. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { say } from "../contract/words";
import { Choices } from "../parts/choices";
import { Problems, Wrong, type Problem } from "../parts/problems";
import { Page } from "./page";
import { thePhone } from "./place";
import { StorageProblem, storageWord } from "./storage_problem";

type Species = "dog" | "cat";

interface Props {
  /** What was searched for and not found, offered as the name. */
  name: string;
  species?: Species;
  /** With the new animal's id, or without when it was given up. */
  onDone: (id?: string, body?: { species: Species; name: string; mark?: string }) => void;
}

const NAME_MOST = 80;
const MARK_MOST = 120;

/** What is missing or too long; an animal without a name goes by its mark. */
export function animalProblems(species: Species | undefined, name: string, mark: string): Problem[] {
  return [
    ...(species ? [] : [{ field: "species", sentence: say("ask-species") }]),
    ...(name || mark ? [] : [{ field: "name", sentence: say("ask-name") }]),
    ...([...(name || mark)].length > NAME_MOST ? [{ field: "name", sentence: say("ask-name-long") }] : []),
    ...([...mark].length > MARK_MOST ? [{ field: "mark", sentence: say("ask-mark-long") }] : []),
  ];
}

/** A page of its own, from the patient list. */
export function AddAnimal(props: Props): JSX.Element {
  return (
    <Page title={say("add-animal-title")}>
      <AddAnimalForm {...props} />
    </Page>
  );
}

/** The form, wherever it stands. */
export function AddAnimalForm(props: Props): JSX.Element {
  const [species, setSpecies] = useState<Species | undefined>(props.species);
  const [name, setName] = useState(props.name);
  const [mark, setMark] = useState("");
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);

  async function save(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const [plainName, plainMark] = [name.trim(), mark.trim()];
    const found = animalProblems(species, plainName, plainMark);
    setProblems(found);
    if (found.length > 0 || !species) return;
    const body = { species, name: plainName || plainMark, ...(plainMark ? { mark: plainMark } : {}) };
    try {
      const filed = await thePhone().file({ kind: "patient", body });
      props.onDone(filed.id, body);
    } catch (failure) {
      setTrouble(storageWord(failure));
    }
  }

  return (
    <>
      <Problems problems={problems} />
      <form class="stack" noValidate onSubmit={(event) => void save(event)}>
        <div id="species" tabIndex={-1}>
          <Wrong field="species" problems={problems} />
          <Choices
            name="species"
            label={say("add-animal-species")}
            answers={[{ value: "dog", label: say("species-dog") }, { value: "cat", label: say("species-cat") }]}
            value={species}
            onChoose={setSpecies}
          />
        </div>
        <TextLine id="name" word="add-animal-name" text={name} onText={setName} problems={problems} />
        <TextLine id="mark" word="add-animal-mark" hint={say("add-animal-mark-hint")} text={mark} onText={setMark} problems={problems} />
        <StorageProblem word={trouble} />
        <button type="submit" class="button act wide">
          {say("add-animal-save")}
        </button>
        <button type="button" class="button wide" onClick={() => props.onDone()}>
          {say("cancel")}
        </button>
      </form>
    </>
  );
}

interface LineProps {
  id: string;
  word: string;
  hint?: string;
  text: string;
  onText: (text: string) => void;
  problems: readonly Problem[];
}

function TextLine({ id, word, hint, text, onText, problems }: LineProps): JSX.Element {
  const wrong = problems.some((problem) => problem.field === id);
  return (
    <div class="field" data-wrong={String(wrong)}>
      <label for={id}>{say(word)}</label>
      {hint && <p class="small quiet" id={`${id}-hint`}>{hint}</p>}
      <Wrong field={id} problems={problems} />
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        autocapitalize="words"
        value={text}
        aria-invalid={wrong ? "true" : undefined}
        aria-describedby={[hint && `${id}-hint`, wrong && `${id}-wrong`].filter(Boolean).join(" ") || undefined}
        onInput={(event) => onText(event.currentTarget.value)}
      />
    </div>
  );
}
