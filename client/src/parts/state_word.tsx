/* Where an entry is, in one of four words and nothing beside them: no tick, no cloud, no colour. In training there is one word. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { inTraining } from "./training_ground";

export type State = "waiting" | "sending" | "stored" | "held" | "refused" | "set_aside" | "training";

const WORDS: Record<State, string> = {
  waiting: "sync-waiting", sending: "sync-sending", stored: "sync-stored",
  held: "sync-needs-you", refused: "sync-needs-you", set_aside: "sync-needs-you", training: "state-training",
};

export function StateWord({ state }: { state: State }): JSX.Element {
  return <p class="state-word">{say(inTraining.value ? WORDS.training : WORDS[state])}</p>;
}
