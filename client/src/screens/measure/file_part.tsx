/* Filing: under which animal, then one letter that holds the measurement and exactly what the rules answered.
   Without an animal it asks for one first (choose_animal.tsx). What cannot be read in a field is named first, and never dropped in silence. */
import type { JSX, RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { FILE_WHO_ID } from "./after_choice";
import { judged } from "./judged";
import type { Keeping } from "./keeping";
import { toPart, type Open } from "./open";
import { allProblems } from "./part_problems";
import { wentOn } from "./series";
import { filedNow } from "../round/filed";
import { thePhone } from "../place";
import { go } from "../route";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import { partOf } from "./fields";

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
        {open.name !== undefined && (
          <button type="button" class="button" onClick={() => keeping.act(another)}>
            {say("file-another")}
          </button>
        )}
      </div>
      <Unread open={open} keeping={keeping} onFile={asked && !filing ? () => press(true) : undefined} />
      <StorageProblem word={trouble} />
      <div class={asked || trouble ? "file-foot" : "file-foot stays"}>
        {open.name !== undefined && <p class="small" id={FILE_WHO_ID} tabIndex={-1}>{say("file-who", { name: animalOf(open) })}</p>}
        <button type="button" class="button act wide" disabled={filing} onClick={() => press(false)}>
          {say("file")}
        </button>
      </div>
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
