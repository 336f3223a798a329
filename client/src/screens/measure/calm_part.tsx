/* Calm: how the animal is, its quiet time, and what it went through, before a cuff goes on. For a known animal three taps: how it is,
   start, next; these and the state stand on one screen, with the way on beside the quiet time. Nothing is compulsory. */
import type { JSX } from "preact";
import "../../contract/calm_words";
import { say } from "../../contract/words";
import { Guide } from "../../parts/guide";
import { CalmMore, PlaceAsLast } from "./calm_more";
import { Calming, State } from "./calming";
import { Demeanour } from "./demeanour";
import { DropDraft } from "./drop_draft";
import type { Keeping } from "./keeping";
import { setNow, type Open } from "./open";
import { QuietPanel } from "./quiet_panel";
import { Typed } from "./typed";

interface Props {
  open: Open;
  keeping: Keeping;
  onDone: () => void;
}

/** Its quiet time is begun or told: the way on is the next thing to do. */
function isSettled({ quiet, measurement }: Open): boolean {
  return quiet !== undefined || measurement.rest_s !== undefined;
}

/** The second part. *Next* folds it; text that cannot be read is named first. */
export function CalmPart({ open, keeping, onDone }: Props): JSX.Element {
  return (
    <div class="part calm">
      <Demeanour keeping={keeping} />
      <State keeping={keeping} />
      <Calming keeping={keeping}>
        <Typed open={open} keeping={keeping} field="hours" mode="numeric" />
      </Calming>
      <QuietPanel open={open} keeping={keeping}>
        <button type="button" class={isSettled(open) ? "button act" : "button"} onClick={onDone}>
          {say("calm-next")}
        </button>
      </QuietPanel>
      <PlaceAsLast keeping={keeping} />
      <CalmMore open={open} keeping={keeping} />
      <Guide step="calm" species={open.measurement.species} method={setNow(open).method} />
      <DropDraft open={open} />
    </div>
  );
}
