/* The limb circumference with its unit beside it, what was understood, and a question where the number is unlikely. Never blocks. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { cm, dayOnly } from "../../parts/figures";
import { TextField } from "../../parts/text_field";
import { Fold, type Folds } from "./cuff_question";
import { echoOf } from "./fields";
import type { Keeping } from "./keeping";
import { limbOfLast } from "./last_set";
import { limbIsRight, limbQuestion, unitOf, withLimb, withUnit, type LimbUnit } from "./limb";
import { setNow, type Open } from "./open";
import { problemsToShow } from "./part_problems";
import { saying } from "./wording";

interface Props {
  open: Open;
  keeping: Keeping;
  folds: Folds;
}

function ageLine(open: Open): string | undefined {
  const then = limbOfLast(open);
  return then && say(then.isOld ? "limb-old" : "limb-of", { day: dayOnly(then.day) });
}

/** The field, or its line with the day it is of. */
export function LimbField({ open, keeping, folds }: Props): JSX.Element {
  const limb = setNow(open).limb_circumference_mm;
  const echoed = echoOf("circumference", open);
  return (
    <Fold folds={folds} question="limb" label={say("line-limb")} answer={limb === undefined ? undefined : say("limb-cm", { cm: cm(limb) })} note={ageLine(open)}>
      <div class="limb">
        <TextField
          id="circumference"
          label={say("field-circumference")}
          echo={echoed && saying(echoed)}
          mode="decimal"
          text={open.texts["circumference"] ?? ""}
          newest={() => keeping.head().texts["circumference"] ?? ""}
          problems={problemsToShow(open)}
          onText={(text) => keeping.act((head) => withLimb(head, text))}
        />
        <Choices
          narrow
          name="limb-unit"
          label={say("field-unit")}
          answers={(["cm", "mm"] as const).map((value) => ({ value, label: say(`unit-${value}`) }))}
          value={unitOf(keeping.head())}
          onChoose={(value: LimbUnit) => keeping.act((head) => withUnit(head, value))}
        />
      </div>
      <Unlikely open={open} keeping={keeping} />
    </Fold>
  );
}

function Unlikely({ open, keeping }: Pick<Props, "open" | "keeping">): JSX.Element | null {
  const question = limbQuestion(open);
  if (!question) return null;
  const { word, typed, meant } = question;
  const facts = { typed, animal: say(`limb-of-${open.measurement.species}`) };
  return (
    <div class="note stack" role="status">
      <p>{meant ? say(`${word}-meant`, { ...facts, cm: meant.cm, mm: meant.mm }) : say(word, facts)}</p>
      <div class="side-by-side">
        {meant && (
          <button type="button" class="button" onClick={() => keeping.act((head) => withUnit(head, meant.unit))}>
            {say(`limb-take-${meant.unit}`, { cm: meant.cm, mm: meant.mm })}
          </button>
        )}
        <button type="button" class="button" onClick={() => keeping.act(limbIsRight)}>
          {say("limb-right", { typed })}
        </button>
      </div>
    </div>
  );
}
