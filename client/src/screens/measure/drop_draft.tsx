/* A measurement begun by mistake is deleted for good, so this one asks first, and names what would go. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { Open } from "./open";
import { thePhone } from "../place";
import { go } from "../route";
import { StorageProblem, storageWord } from "../phone/storage_problem";

export function DropDraft({ open }: { open: Open }): JSX.Element {
  const [asked, setAsked] = useState(false);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const n = open.measurement.sets.reduce((sum, set) => sum + set.readings.length, 0);
  const drop = (): void => {
    thePhone().dropDraft(open.id).then(() => go("#/round", true), (failure: unknown) => setTrouble(storageWord(failure)));
  };
  if (!asked) {
    return (
      <button type="button" class="button wide small" onClick={() => setAsked(true)}>
        {say("draft-drop")}
      </button>
    );
  }
  return (
    <div class="note stack" role="alert">
      <p>{say("draft-drop-ask", { n, name: open.name ?? say("draft-name-none") })}</p>
      <StorageProblem word={trouble} />
      <button type="button" class="button" onClick={() => setAsked(false)}>
        {say("draft-drop-no")}
      </button>
      <button type="button" class="button" onClick={drop}>
        {say("draft-drop-yes")}
      </button>
    </div>
  );
}
