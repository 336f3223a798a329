/* Problems of set-up and cuff as sentences, shown once their part was committed. */
import { say } from "../../contract/words";
import type { Problem } from "../../parts/problems";
import { partOf, problemsOf, type FieldId, type WordsId } from "./fields";
import type { Open } from "./open";

/** One problem as a sentence in the words of its field. */
function sentenceOf({ field, saying }: ReturnType<typeof problemsOf>[number]): Problem & { field: FieldId | WordsId } {
  return { field, sentence: say(saying.word, { ...saying.facts, field: say(String(saying.facts["field"])) }) };
}

/** What cannot be read, in either part. */
export function allProblems(open: Open): (Problem & { field: FieldId | WordsId })[] {
  return problemsOf(open).map(sentenceOf);
}

/** What is shown now: only of parts that were left once, so that nobody is corrected while typing. */
export function problemsToShow(open: Open): (Problem & { field: FieldId | WordsId })[] {
  return allProblems(open).filter(({ field }) => open.texts[`left_${partOf(field)}`] === "yes");
}

/** What is wrong on the part that is shown, and on no other: of the others nothing stands on the screen that could be mended. */
export function problemsHere(open: Open): (Problem & { field: FieldId | WordsId })[] {
  return problemsToShow(open).filter(({ field }) => partOf(field) === open.part);
}
