/* Filing: under which animal, then one letter that holds the measurement and exactly what the rules answered.
   Without an animal it asks to choose or add one. What cannot be read in a field is named first, and never dropped in silence. */
import type { JSX, RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { AddAnimalForm } from "../animal/add_animal";
import { judged } from "./judged";
import type { Keeping } from "./keeping";
import { toPart, type Open } from "./open";
import { allProblems } from "./part_problems";
import { wentOn } from "./series";
import { patientFacts, startOf } from "./start_measuring";
import { under } from "./under";
import { AnimalLine, animalText } from "../animal/animal_line";
import { patientOf } from "../animal/animals";
import { isBegun } from "../forms_begun";
import { filedNow } from "../round/filed";
import { thePhone } from "../place";
import { go } from "../route";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import { partOf } from "./fields";
import { useRead } from "../use_read";

interface Props {
  open: Open;
  keeping: Keeping;
}

/** Files the head, not the paint: what was typed last belongs to it too. */
async function fileNow(keeping: Keeping): Promise<void> {
  const phone = thePhone(); // this one and no other, should training begin or end meanwhile
  await keeping.retry();
  const head = keeping.head();
  const assessment = judged(head);
  const { id } = await phone.file({ kind: "measurement", body: head.measurement, rules: assessment.rules, assessment }, head.id);
  filedNow.value = { id, name: head.name ?? "" };
  go("#/round", true);
}

export function FilePart({ open, keeping }: Props): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const [filing, setFiling] = useState(false);
  const [asked, setAsked] = useState(false);

  function press(isMeant: boolean): void {
    const asks = !isMeant && allProblems(keeping.head()).length > 0;
    setAsked(asks);
    if (asks) return;
    if (!keeping.head().measurement.patient) {
      void keeping.act((head) => ({ ...head, choosing: true }));
      return;
    }
    setFiling(true);
    fileNow(keeping).catch((failure: unknown) => {
      setTrouble(storageWord(failure));
      setFiling(false);
    });
  }

  const another = (head: Open): Open => ({ ...head, choosing: true });
  return (
    <>
      <div class="side-by-side">
        <button type="button" class="button" onClick={() => keeping.act(wentOn)}>
          {say(open.measurement.outcome ? "stop-went-on" : "back-to-readings")}
        </button>
        {open.name !== undefined && !open.choosing && (
          <button type="button" class="button" onClick={() => keeping.act(another)}>
            {say("file-another")}
          </button>
        )}
      </div>
      {open.choosing && <ChooseAnimal open={open} keeping={keeping} />}
      <Unread open={open} keeping={keeping} onFile={asked && !filing ? () => press(true) : undefined} />
      <StorageProblem word={trouble} />
      {!open.choosing && (
        <div class={asked || trouble ? "file-foot" : "file-foot stays"}>
          {open.name !== undefined && <p class="small">{say("file-who", { name: animalOf(open) })}</p>}
          <button type="button" class="button act wide" disabled={filing} onClick={() => press(false)}>
            {say("file")}
          </button>
        </div>
      )}
    </>
  );
}

/** Name, mark and species of the animal it is filed under. */
function animalOf({ name, mark, measurement }: Open): string {
  return [name, mark, say(`species-${measurement.species}`)].filter(Boolean).join(", ");
}

/** What could not be read, each a way back to its field; after a press on *File* also the way to file without it. */
function Unread({ open, keeping, onFile }: Props & { onFile: (() => void) | undefined }): JSX.Element | null {
  const problems = allProblems(open);
  const intoSight = useSight(onFile !== undefined);
  if (problems.length === 0) return null;
  return (
    <>
      {problems.map(({ field, sentence }) => (
        <button key={field} type="button" class="button wrong" onClick={() => keeping.act((head) => toPart(head, partOf(field)))}>
          {sentence}
        </button>
      ))}
      {onFile && (
        <div class="note stack" role="alert" ref={intoSight}>
          <p>{say("file-problems")}</p>
          <button type="button" class="button wide" onClick={onFile}>
            {say("file-without")}
          </button>
        </div>
      )}
    </>
  );
}

/** What a press at the foot of the screen has opened is brought into sight. */
function useSight(isOpen: boolean): RefObject<HTMLDivElement | null> {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isOpen) place.current?.scrollIntoView({ block: "nearest" });
  }, [isOpen]);
  return place;
}

function ChooseAnimal({ open, keeping }: Props): JSX.Element {
  const [adding, setAdding] = useState(false);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const intoSight = useSight(true);
  const about = `new/${open.id}`;
  useEffect(() => {
    void isBegun(about).then((begun) => begun && setAdding(true), () => undefined);
  }, [about]);
  const { species } = open.measurement;
  const cards = (useRead(() => thePhone().patients()) ?? []).filter((card) => patientOf(card).species === species);
  const choose = (card: PatientCard): void => {
    startOf(card, open.measurement.started_at_ms ?? Date.now()).then(
      (start) => keeping.act((head) => under(head, start)),
      (failure: unknown) => setTrouble(storageWord(failure)),
    );
  };
  if (adding) {
    return (
      <AddAnimalForm
        about={about}
        name=""
        species={species}
        onDone={(id, body) => {
          setAdding(false);
          if (id && body) void keeping.act((head) => under(head, { species: body.species, patient: patientFacts(id, body) }));
        }}
      />
    );
  }
  return (
    <div class="stack" ref={intoSight}>
      <h2>{say("file-needs-animal")}</h2>
      <StorageProblem word={trouble} />
      <p class="small">{say("file-needs-animal-hint")} {say("file-other-species")}</p>
      <button type="button" class="button" onClick={() => setAdding(true)}>
        {say("add-animal")}
      </button>
      <ul class="list">
        {cards.map((card) => (
          <li key={card.id}>
            <button type="button" class="row" aria-label={say("file-choose", { name: animalText(card) })} onClick={() => choose(card)}>
              <AnimalLine card={card} />
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
