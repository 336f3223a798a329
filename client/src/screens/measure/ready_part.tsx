/* Ready?: may this animal be measured now. Four answers, each one tap. Must not keep anybody from measuring: it asks and records. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { DropDraft } from "./drop_draft";
import type { Keeping } from "./keeping";
import { changed, type Open } from "./open";

interface Props {
  open: Open;
  keeping: Keeping;
  onDone: () => void;
}

/** The first part: the species where it is not known, then *Next*. */
export function ReadyPart({ open, keeping, onDone }: Props): JSX.Element {
  return (
    <div class="part">
      {open.name === undefined && (
        <Choices
          name="species"
          label={say("field-species")}
          answers={(["dog", "cat"] as const).map((value) => ({ value, label: say(`species-${value}`) }))}
          value={keeping.head().measurement.species}
          onChoose={(value) => keeping.act((head) => changed(head, "field-species", ["measurement", "species"], value))}
        />
      )}
      <button type="button" class="button act wide" onClick={onDone}>
        {say("ready-next")}
      </button>
      <DropDraft open={open} />
    </div>
  );
}
