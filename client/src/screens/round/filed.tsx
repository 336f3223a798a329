/* What was filed last, said on the patient list in the word for where it is by now: saved here, in the record, or needs you. */
import { signal } from "@preact/signals";
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { StateWord } from "../../parts/state_word";
import { shownState } from "../outbox/entry_state";
import { thePhone } from "../place";
import { useRead } from "../use_read";

interface FiledNow {
  id: string;
  name: string;
}

/** Set by filing, cleared when the next measurement begins. */
export const filedNow = signal<FiledNow | undefined>(undefined);

export function FiledLine(): JSX.Element | null {
  const filed = filedNow.value;
  const entries = useRead(() => thePhone().outbox(), [filed?.id]);
  if (!filed) return null;
  const entry = entries?.find((one) => one.id === filed.id);
  return (
    <div class="note" role="status">
      <p>{say("filed-to", { name: filed.name })}</p>
      <StateWord state={entry ? shownState(entry, thePhone().status.value.sending) : "waiting"} />
    </div>
  );
}
