/* Where a result stands in training: said beside it, so that nobody copies it into a record for a real one. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { inTraining } from "../../parts/training_ground";

export function TrainingNote(): JSX.Element | null {
  return inTraining.value ? <p class="note">{say("training-not-filed")}</p> : null;
}
