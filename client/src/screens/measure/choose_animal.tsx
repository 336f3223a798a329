/* Which animal was this: asked before a visit without one is filed, or when it was another. It stands where the eye is, on top, with the
   result folded below its keys. Must not file anything. */
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { AddAnimalForm } from "../animal/add_animal";
import { AnimalLine, animalText } from "../animal/animal_line";
import { matching, patientOf } from "../animal/animals";
import { FindField } from "../animal/find_field";
import { isBegun } from "../forms_begun";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import { thePhone } from "../place";
import { useRead } from "../use_read";
import type { Keeping } from "./keeping";
import type { Open } from "./open";
import { patientFacts, startOf } from "./start_measuring";
import { under } from "./under";

interface Props {
  open: Open;
  keeping: Keeping;
  children: ComponentChildren;
}

/** Back to the result, under the animal it had, or none. */
function chosen(open: Open): Open {
  const { choosing: _choosing, ...rest } = open;
  return rest;
}

/** The form of a new one, in the place of the list; taken up again where it was begun. */
function AddOne({ open, keeping, onDone }: Pick<Props, "open" | "keeping"> & { onDone: () => void }): JSX.Element {
  return (
    <AddAnimalForm
      about={aboutOf(open)}
      name=""
      species={open.measurement.species}
      onDone={(id, body) => {
        onDone();
        if (id && body) void keeping.act((head) => under(head, { species: body.species, patient: patientFacts(id, body) }));
      }}
    />
  );
}

function aboutOf({ id }: Open): string {
  return `new/${id}`;
}

/** From more than so many on, a name is found sooner by typing than by scrolling. */
const FOUND_BY_EYE = 8;

/** The animals of this species; a tap on one takes the visit to it. */
function Cards({ open, keeping }: Pick<Props, "open" | "keeping">): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const [search, setSearch] = useState("");
  const { species } = open.measurement;
  const cards = (useRead(() => thePhone().patients()) ?? []).filter((card) => patientOf(card).species === species);
  const found = matching(cards, search);
  const choose = (card: PatientCard): void => {
    startOf(card, open.measurement.started_at_ms ?? Date.now()).then(
      (start) => keeping.act((head) => under(head, start)),
      (failure: unknown) => setTrouble(storageWord(failure)),
    );
  };
  return (
    <>
      <StorageProblem word={trouble} />
      {cards.length > FOUND_BY_EYE && <FindField search={search} onSearch={setSearch} />}
      {cards.length > 0 && found.length === 0 && <p role="status">{say("patients-none-found", { text: search })}</p>}
      <ul class="list">
        {found.map((card) => (
          <li key={card.id}>
            <button type="button" class="row" aria-label={say("file-choose", { name: animalText(card) })} onClick={() => choose(card)}>
              <AnimalLine card={card} />
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** In the place of the whole result, which stands folded below its keys (`children`); the first key leads back to it. */
export function ChooseAnimal({ open, keeping, children }: Props): JSX.Element {
  const [adding, setAdding] = useState(false);
  const title = useRef<HTMLHeadingElement>(null);
  const about = aboutOf(open);
  useEffect(() => {
    void isBegun(about).then((begun) => begun && setAdding(true), () => undefined);
  }, [about]);
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus({ preventScroll: true });
  }, [adding]);
  if (adding) return <AddOne open={open} keeping={keeping} onDone={() => setAdding(false)} />;
  return (
    <div class="stack">
      <h2 ref={title} tabIndex={-1}>{say("file-needs-animal")}</h2>
      <p class="small">{say("file-needs-animal-hint")} {say("file-other-species")}</p>
      <div class="side-by-side">
        <button type="button" class="button" onClick={() => keeping.act(chosen)}>
          {say("file-choose-back")}
        </button>
        <button type="button" class="button" onClick={() => setAdding(true)}>
          {say("add-animal")}
        </button>
      </div>
      <details class="more">
        <summary>{say("part-result")}</summary>
        {children}
      </details>
      <Cards open={open} keeping={keeping} />
    </div>
  );
}
