/* The form of who an animal is, and back: what stands in it at first, and what it comes to when it is saved. Pure.
   What was not touched stays exactly as it was told, down to the day of birth. */
import type { Patient1 as Patient } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { DAY_MS } from "../../parts/figures";
import type { Problem } from "../../parts/problems";
import { animalProblems } from "./animal_problems";
import type { Form } from "../forms_begun";
import { birthDay, changesIdentity, type BirthAs } from "./patient_facts";

type Identifier = NonNullable<Patient["identifiers"]>[number];

export const IDENTIFIER_KINDS = ["chip", "tattoo", "kennel", "tag", "record_number", "other"] as const satisfies readonly Identifier["kind"][];
export const SEXES = ["female", "male", "female_neutered", "male_neutered", "not_known"] as const satisfies readonly NonNullable<Patient["sex"]>[];
/** As many as the wire document takes, and its longest texts, in characters. */
export const IDENTIFIERS_MOST = 8;
const IDENTIFIER_MOST = 60;
const BREED_MOST = 80;
const REASON_MOST = 200;

/** A day of birth as it is typed: month and year. */
function birthText(born_on_day: number | undefined): string {
  if (born_on_day === undefined) return "";
  const born = new Date(born_on_day * DAY_MS);
  return `${born.getUTCMonth() + 1}/${born.getUTCFullYear()}`;
}

/** What stands in the form when it is opened. */
export function firstOf({ species, name, mark, born_on_day, sex, breed, identifiers = [] }: Patient): Pick<Form, "texts" | "chosen"> {
  const [kinds, texts] = [
    identifiers.map(({ kind }, at) => [`kind_${at}`, kind] as const),
    identifiers.map(({ text }, at) => [`identifier_${at}`, text] as const),
  ];
  return {
    texts: { name, mark: mark ?? "", breed: breed ?? "", birth: birthText(born_on_day), ...Object.fromEntries(texts) },
    chosen: {
      species, birth_as: "born", identifiers: String(identifiers.length), ...(sex ? { sex } : {}), ...Object.fromEntries(kinds),
    },
  };
}

function identifiersOf({ texts, chosen }: Form): Identifier[] {
  return Array.from({ length: Number(chosen["identifiers"] ?? "0") }, (_, at) => at).flatMap((at) => {
    const text = (texts[`identifier_${at}`] ?? "").trim();
    return text ? [{ kind: (chosen[`kind_${at}`] ?? "other") as Identifier["kind"], text }] : [];
  });
}

function bornOf(before: Patient, { texts, chosen }: Form, now_ms: number): { day: number | undefined; isRead: boolean } {
  const [as, text] = [(chosen["birth_as"] ?? "born") as BirthAs, (texts["birth"] ?? "").trim()];
  if (as === "born" && text === birthText(before.born_on_day)) return { day: before.born_on_day, isRead: true };
  const day = text ? birthDay(as, text, now_ms) : undefined;
  return { day, isRead: !text || day !== undefined };
}

const isLong = (text: string | undefined, most: number): boolean => [...(text ?? "")].length > most;

/** What the form comes to: the changed facts of the animal, and what must be mended before. */
export function readWho(before: Patient, form: Form, now_ms: number): { patient: Patient; problems: Problem[] } {
  const { texts, chosen } = form;
  const text = (field: string): string => (texts[field] ?? "").trim();
  const [mark, breed, identifiers, born] = [text("mark"), text("breed"), identifiersOf(form), bornOf(before, form, now_ms)];
  const told = {
    ...before,
    species: (chosen["species"] ?? before.species) as Patient["species"], name: text("name") || mark,
    mark: mark || undefined, breed: breed || undefined, born_on_day: born.day, sex: chosen["sex"] as Patient["sex"],
    identifiers: identifiers.length > 0 ? identifiers : undefined,
  };
  const patient = told as Patient;
  const asked = changesIdentity(before, patient) ? text("reason") : "-";
  const problems = [
    ...animalProblems(patient.species, text("name"), mark),
    ...identifiers.flatMap(({ text: one }, at) => (isLong(one, IDENTIFIER_MOST) ? [{ field: `identifier_${at}`, sentence: say("ask-identifier-long") }] : [])),
    ...(born.isRead ? [] : [{ field: "birth", sentence: say("ask-birth") }]),
    ...(isLong(breed, BREED_MOST) ? [{ field: "breed", sentence: say("ask-breed-long") }] : []),
    ...(asked ? [] : [{ field: "reason", sentence: say("ask-reason") }]),
    ...(isLong(asked, REASON_MOST) ? [{ field: "reason", sentence: say("ask-reason-long") }] : []),
  ];
  return { patient, problems };
}
