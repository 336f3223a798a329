/* Training: the way in, the way out, and starting anew. It has a store of its own and never touches the record. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { sayHelp } from "../../contract/help_words";
import { say } from "../../contract/words";
import { inTraining } from "../../parts/training_ground";
import { Page } from "../page";
import { StorageProblem, storageWord } from "./storage_problem";
import { enterTraining, leaveTraining, startTrainingAnew } from "./training_way";

/** One act that takes everything made in training away; it says what, and asks once. */
function StartAnew({ onTrouble }: { onTrouble: (failure: unknown) => void }): JSX.Element {
  const [state, setState] = useState<"" | "asked" | "done">("");
  const clear = (): void => void startTrainingAnew().then(() => setState("done"), onTrouble);
  if (state !== "asked") {
    return (
      <>
        <button type="button" class="button wide" onClick={() => setState("asked")}>
          {sayHelp("training-clear")}
        </button>
        <p role="status">{state === "done" && sayHelp("training-cleared")}</p>
      </>
    );
  }
  return (
    <div class="note stack" role="alert">
      <p>{sayHelp("training-clear-ask")}</p>
      <div class="side-by-side">
        <button type="button" class="button" onClick={clear}>{sayHelp("training-clear-yes")}</button>
        <button type="button" class="button" onClick={() => setState("")}>{sayHelp("training-clear-no")}</button>
      </div>
    </div>
  );
}

export function Training(): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const onTrouble = (failure: unknown): void => setTrouble(storageWord(failure));
  const enter = (): void => void enterTraining().catch(onTrouble);
  return (
    <Page title={say("training-title")} help="training">
      <p>{sayHelp("training-what")}</p>
      <p>{sayHelp("training-never")}</p>
      <StorageProblem word={trouble} />
      <button type="button" class="button act wide" onClick={inTraining.value ? leaveTraining : enter}>
        {sayHelp(inTraining.value ? "training-leave" : "training-enter")}
      </button>
      {inTraining.value && <StartAnew onTrouble={onTrouble} />}
    </Page>
  );
}
