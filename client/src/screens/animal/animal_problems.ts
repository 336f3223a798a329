/* What every form about an animal must have: its species, and a name or a mark that fits. Pure. */
import { say } from "../../contract/words";
import type { Problem } from "../../parts/problems";

export type Species = "dog" | "cat";

const NAME_MOST = 80;
const MARK_MOST = 120;

/** What is missing or too long; an animal without a name goes by its mark. */
export function animalProblems(species: string | undefined, name: string, mark: string): Problem[] {
  return [
    ...(species ? [] : [{ field: "species", sentence: say("ask-species") }]),
    ...(name || mark ? [] : [{ field: "name", sentence: say("ask-name") }]),
    ...([...(name || mark)].length > NAME_MOST ? [{ field: "name", sentence: say("ask-name-long") }] : []),
    ...([...mark].length > MARK_MOST ? [{ field: "mark", sentence: say("ask-mark-long") }] : []),
  ];
}

/** The question of the species, everywhere it is asked. */
export function speciesAnswers(): { value: Species; label: string }[] {
  return (["dog", "cat"] as const).map((value) => ({ value, label: say(`species-${value}`) }));
}
