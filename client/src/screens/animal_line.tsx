/* One animal in a list: name, species, mark, how it takes handling when that needs thought, and when it was measured last. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import type { PatientCard } from "../offline/journal";
import { dayAndTime } from "../parts/figures";
import { handlingWord, inOneLine, patientOf } from "./animals";

/** From this grade on a second person is needed, and the list says so. */
const SAID_FROM_GRADE = 2;

export function AnimalLine({ card }: { card: PatientCard }): JSX.Element {
  const { name, species, mark, handling } = patientOf(card);
  const grade = handling?.grade ?? 0;
  const seen = card.lastVisitMs === undefined ? undefined : say("animal-last", { when: dayAndTime(card.lastVisitMs) });
  return (
    <>
      <strong>{name}</strong>
      <span class="small quiet">{inOneLine(say(`species-${species}`), mark, seen)}</span>
      {grade >= SAID_FROM_GRADE && <span class="small">{handlingWord(grade)}</span>}
    </>
  );
}
