/* The facts of who an animal is, each with its label and in words: for telling two wordings apart. Must not decide which one stands. */
import { say } from "../../contract/words";
import { kebab } from "../../parts/word_ids";
import type { Filled } from "../forms_begun";
import type { Fact } from "./meanwhile";
import type { ToldFact } from "./patient_meanwhile";
import { IDENTIFIERS_MOST } from "./patient_who";

/** All identifiers are one fact: a list changed in two places cannot be told apart line by line. */
const IDENTIFIERS: Fact = [
  "identifiers", ...Array.from({ length: IDENTIFIERS_MOST }, (_, at) => [`kind_${at}`, `identifier_${at}`]).flat(),
];

function identifiersTold({ texts, chosen }: Filled): string {
  const lines = Array.from({ length: Number(chosen["identifiers"] ?? "0") }, (_, at) => at).flatMap((at) => {
    const text = (texts[`identifier_${at}`] ?? "").trim();
    return text ? [say("identifier-line", { kind: say(`identifier-${kebab(chosen[`kind_${at}`] ?? "other")}`), text })] : [];
  });
  return lines.join(", ");
}

function birthTold({ texts, chosen }: Filled): string {
  const text = (texts["birth"] ?? "").trim();
  return text && `${say(`birth-${chosen["birth_as"] ?? "born"}`)}: ${text}`;
}

/** Every fact of the form but the reason, which belongs to the change and not to the animal. */
export function whoFacts(): ToldFact[] {
  const typed = (field: string, label: string): ToldFact => ({ fact: [field], label, told: ({ texts }) => texts[field] ?? "" });
  return [
    typed("name", say("add-animal-name")),
    typed("mark", say("add-animal-mark")),
    { fact: ["species"], label: say("add-animal-species"), told: ({ chosen: { species } }) => (species ? say(`species-${species}`) : "") },
    { fact: IDENTIFIERS, label: say("identifiers-title"), told: identifiersTold },
    { fact: ["birth", "birth_as"], label: say("birth-ask"), told: birthTold },
    { fact: ["sex"], label: say("field-sex"), told: ({ chosen: { sex } }) => (sex ? say(`sex-${kebab(sex)}`) : "") },
    typed("breed", say("field-breed")),
  ];
}
