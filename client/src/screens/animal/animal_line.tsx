/* One animal in a list: name, species, mark, how it takes handling when that needs thought, and when it was measured last. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { dayAndTime } from "../../parts/figures";
import { handlingWord, inOneLine, patientOf } from "./animals";

/** From this grade on a second person is needed, and the list says so. */
const SAID_FROM_GRADE = 2;

/** Its parts as they are shown; what has nothing to say is left out. */
function partsOf(card: PatientCard): [string, string, string?] {
  const { name, species, mark, handling } = patientOf(card);
  const grade = handling?.grade ?? 0;
  const seen = card.lastVisitMs === undefined ? undefined : say("animal-last", { when: dayAndTime(card.lastVisitMs) });
  const about = inOneLine(say(`species-${species}`), mark, seen);
  return grade >= SAID_FROM_GRADE ? [name, about, handlingWord(grade)] : [name, about];
}

/** The whole line as one text, for the name of a key that shows it: a key is named by what is seen on it. */
export function animalText(card: PatientCard): string {
  return partsOf(card).join(" ");
}

export function AnimalLine({ card }: { card: PatientCard }): JSX.Element {
  const [name, about, handling] = partsOf(card);
  return (
    <>
      <strong>{name}</strong> <span class="small quiet">{about}</span> {handling && <span class="small">{handling}</span>}
    </>
  );
}
