/* A new animal: species, name, mark; two taps and the typing. Filed at once, so that it is on this phone for good. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
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

/** What is typed of a new animal. */
interface Begun {
  species?: Species | undefined;
  name: string;
  mark: string;
}

const BEGUN = "new-animal";

/** What was being typed when the app was killed; undefined when nothing was. */
export async function recallBegun(): Promise<Begun | undefined> {
  return ((await thePhone().recall(BEGUN)) as Begun | null | undefined) ?? undefined;
}

/** Keeps what is typed, boxed like everything else; null when it was saved or given up. A failure shows at *Save*. */
function keepBegun(begun: Begun | null): void {
  void thePhone().remember(BEGUN, begun).catch(() => undefined);
}

/** A page of its own, from the patient list. */
export function AddAnimal(props: Props): JSX.Element {
  const [wrong, setWrong] = useState(false);
  return (
    <Page title={say("add-animal-title")} wrong={wrong}>
      <AddAnimalForm {...props} onWrong={setWrong} />
    </Page>
  );
}

/** The newest text of the form, kept as it is typed, and found again after a kill. */
function useBegun(first: Begun, isKept: boolean): [Begun, (change: Partial<Begun>) => void] {
  const [begun, setBegun] = useState<Begun>(first);
  useEffect(() => {
    if (isKept) void recallBegun().then((kept) => kept && setBegun(kept));
  }, []);
  const change = (part: Partial<Begun>): void =>
    setBegun((now) => {
      const next = { ...now, ...part };
      if (isKept) keepBegun(next);
      return next;
    });
  return [begun, change];
}

/** The form, wherever it stands. */
export function AddAnimalForm(props: Props & { onWrong?: (wrong: boolean) => void }): JSX.Element {
  const isKept = props.species === undefined; // at *File* the species is given: another animal's half-typed name must not appear there
  const [{ species, name, mark }, change] = useBegun({ species: props.species, name: props.name, mark: "" }, isKept);
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);

  async function save(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const [plainName, plainMark] = [name.trim(), mark.trim()];
    const found = animalProblems(species, plainName, plainMark);
    setProblems(found);
    props.onWrong?.(found.length > 0);
    if (found.length > 0 || !species) return;
    const body = { species, name: plainName || plainMark, ...(plainMark ? { mark: plainMark } : {}) };
    try {
      const filed = await thePhone().file({ kind: "patient", body });
      if (isKept) keepBegun(null);
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
            onChoose={(chosen) => change({ species: chosen })}
          />
        </div>
        <TextLine id="name" word="add-animal-name" text={name} onText={(text) => change({ name: text })} problems={problems} />
        <TextLine id="mark" word="add-animal-mark" hint={say("add-animal-mark-hint")} text={mark} onText={(text) => change({ mark: text })} problems={problems} />
        <StorageProblem word={trouble} />
        <button type="submit" class="button act wide">
          {say("add-animal-save")}
        </button>
        <button type="button" class="button wide" onClick={() => { if (isKept) keepBegun(null); props.onDone(); }}>
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
