/* Not today, on the screen: the reason in one tap, then a few words if wanted, and File by the way every visit is filed.
   After a bite or scratch, or with the animal in trouble, it says what comes first and gives no advice beyond. */
import type { JSX } from "preact";
import "../../contract/calm_words";
import { say } from "../../contract/words";
import { TextField } from "../../parts/text_field";
import { kebab } from "../../parts/word_ids";
import { RESULT_ID } from "./after_choice";
import { FilePart } from "./file_part";
import type { Keeping } from "./keeping";
import { withoutSheet, type Open } from "./open";
import { isNoteLong, NOTE_MOST, notToday, reasonsNow, withNote } from "./outcome";

interface Props {
  open: Open;
  keeping: Keeping;
}

/** Over *Ready?*: why. */
export function WhyNotToday({ open, keeping }: Props): JSX.Element {
  return (
    <section class="part" aria-label={say("not-today-title")}>
      <h2>{say("not-today-title")}</h2>
      <p class="small">{say("not-today-hint")}</p>
      <div class="why-keys">
        {reasonsNow(open).map((why) => (
          <button key={why} type="button" class="button" onClick={() => keeping.act((head) => notToday(head, why))}>
            {say(`why-stopped-${kebab(why)}`)}
          </button>
        ))}
      </div>
      <button type="button" class="button wide" onClick={() => keeping.act(withoutSheet)}>
        {say("not-today-back")}
      </button>
    </section>
  );
}

type Why = NonNullable<Open["measurement"]["outcome"]>["why"];

/** What comes first, by the reason: trouble of the animal is row 0 of the next step, at any moment of the visit. */
const FIRST: Partial<Record<Why, string>> = { bite_or_scratch: "bite-rule", breathing: "help-first-then", not_responsive: "help-first-then" };

/** What comes first after a bite or scratch, or when the animal is in trouble; nothing for another outcome. */
export function FirstOfAll({ open }: { open: Open }): JSX.Element | null {
  const word = FIRST[open.measurement.outcome?.why ?? "other"];
  return word ? <p class="note" role="alert"><strong>{say(word)}</strong></p> : null;
}

function Note({ open, keeping }: Props): JSX.Element {
  const problems = isNoteLong(open) ? [{ field: "note", sentence: say("not-today-note-long", { most: String(NOTE_MOST) }) }] : [];
  return (
    <TextField
      id="note"
      label={say("not-today-note")}
      mode="text"
      text={open.texts["note"] ?? ""}
      newest={() => keeping.head().texts["note"] ?? ""}
      problems={problems}
      onText={(text) => keeping.act((head) => withNote(head, text))}
    />
  );
}

/** That it was not measured today, and why. */
export function notTodayLine({ measurement: { outcome } }: Open): string {
  return say("result-not-today", { why: say(`why-stopped-${kebab(outcome?.why ?? "other")}`) });
}

/** In the place of a result: the reason, a note, and filing once the note can be kept whole. */
export function NotToday({ open, keeping }: Props): JSX.Element {
  return (
    <div class="part result">
      <section class="stack" aria-label={say("part-result")} id={RESULT_ID} tabIndex={-1}>
        <p class="outcome-words">{notTodayLine(open)}</p>
        <FirstOfAll open={open} />
        <Note open={open} keeping={keeping} />
      </section>
      {!isNoteLong(open) && <FilePart open={open} keeping={keeping} />}
    </div>
  );
}
