/* What each rule came to in this measurement, in a sentence or a few, for "How this was worked out".
   Reads the assessment alone and works nothing out; a rule that had nothing to say here says so. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { permille } from "../../parts/figures";
import type { Assessment } from "../../rules/assessment";
import type { RuleName } from "./rule_figures";
import { boundsOf, cautionOf, heightLine, meanLine, phraseOf, resultSetOf, spreadLine, usedLine, verdictLine, withheldOf } from "./wording";

type Lines = (measurement: Measurement, assessment: Assessment) => (string | undefined)[];

const HERE: Record<RuleName, Lines> = {
  cuff: ({ sets }, assessment) => {
    const { cuff } = resultSetOf(assessment);
    const mm = sets[assessment.result_set]?.cuff_width_mm;
    if (!cuff || mm === undefined) return [say("worked-here-no-cuff")];
    return [say("used-line", { mm: String(mm), share: permille(cuff.share_permille), fit: say(`fit-${cuff.fit}`) })];
  },
  standing: (measurement, assessment) => [usedLine(measurement, assessment)],
  agreement: (measurement, assessment) => [verdictLine(assessment, assessment.result_set, { measurement })],
  averaging: (_measurement, assessment) => [meanLine(resultSetOf(assessment)), spreadLine(resultSetOf(assessment))],
  bounds: ({ sets }, assessment) => [boundsOf(resultSetOf(assessment), sets[assessment.result_set]?.readings ?? [])],
  height: (measurement, assessment) => [heightLine(measurement, assessment)],
  category: (_measurement, assessment) => [say("sentence", { words: phraseOf(assessment) }), withheldOf(assessment)],
  cautions: (measurement, { cautions }) => (cautions ?? []).map(({ key, direction }) => cautionOf(key, direction, measurement)),
};

/** The sentences of one rule about this measurement; that it said nothing is a sentence too. */
export function workedHere(name: RuleName, measurement: Measurement, assessment: Assessment): string[] {
  const lines = HERE[name](measurement, assessment).filter((line): line is string => Boolean(line));
  return lines.length > 0 ? lines : [say("worked-here-nothing")];
}
