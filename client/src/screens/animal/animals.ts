/* Animals as lists show and find them: by name, by mark, by whatever number they carry. Pure, and small: it is part of the first
   paint. Must not hide one that matches. */
import type { Patient1 as Patient } from "../../contract/wire_types";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";

/** The animal as it is said in a letter of kind patient. */
export function patientOf(card: PatientCard): Patient {
  return card.letter.body as unknown as Patient;
}

/** Folds case and accents, so that typing "zoe" finds "Zoë". */
export function folded(text: string): string {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();
}

/** A number as it is typed off a reader or a paper: without the blanks, points and hyphens that group it. */
export function bare(text: string): string {
  return text.replace(/[\s.\-/]+/gu, "");
}

function textOf(card: PatientCard): string {
  const { name, mark = "", identifiers = [] } = patientOf(card);
  return folded([name, mark, ...identifiers.flatMap(({ text }) => [text, bare(text)])].join(" "));
}

/** Cards whose name, mark or identifiers hold every word of the search; a number may be grouped in any way. */
export function matching(cards: readonly PatientCard[], search: string): PatientCard[] {
  const words = folded(search).split(/\s+/u).filter(Boolean);
  const number = bare(folded(search));
  const isNumber = /^\p{Nd}{4,}$/u.test(number);
  return cards.filter((card) => {
    const text = textOf(card);
    return words.every((word) => text.includes(word)) || (isNumber && text.includes(number));
  });
}

/** Parts of a line that are there, in order. */
export function inOneLine(...parts: (string | undefined | false)[]): string {
  return parts.filter(Boolean).join(" · ");
}

/** How a grade of handling is said. */
export function handlingWord(grade: number): string {
  return say(`handling-${grade}`);
}
