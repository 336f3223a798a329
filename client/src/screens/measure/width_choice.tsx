/* The cuff: what the bag offers for this limb, and the width that was really used, in one question. The choice only offers;
   what goes into the record is the width a person says was used. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { permille, tenths } from "../../parts/figures";
import { Guide } from "../../parts/guide";
import { kebab } from "../../parts/word_ids";
import { chooseCuff, cuffFit } from "../../rules/cuff";
import { Fold, type Folds } from "./cuff_question";
import { withPlain } from "./fields";
import { RULES } from "./judged";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, type Open } from "./open";
import { Typed } from "./typed";

interface Props {
  open: Open;
  keeping: Keeping;
  folds: Folds;
  widths: readonly { width_mm: number; marks: string[] }[];
}

const OTHER = "other";

function used(open: Open, width_mm: number): Open {
  return changed({ ...open, texts: { ...open.texts, width: "", width_other: "" } }, "field-width", inSetNow(open, "cuff_width_mm"), width_mm);
}

function withOther(open: Open): Open {
  return withPlain({ ...open, texts: { ...open.texts, width_other: "yes" } }, inSetNow(open, "cuff_width_mm"), undefined);
}

/** The width the bag offers; undefined when it has none that fits, or the limb is not measured. */
function offered(open: Open, widths: Props["widths"]): ReturnType<typeof chooseCuff> | undefined {
  const { limb_circumference_mm: limb } = setNow(open);
  if (limb === undefined || widths.length === 0) return undefined;
  return chooseCuff(open.measurement.species, limb, widths.map(({ width_mm }) => width_mm), RULES.documents.cuff);
}

/** What the bag offers, in words; with no fit, the target and what then. */
function Offer({ open, widths }: Pick<Props, "open" | "widths">): JSX.Element | null {
  if (widths.length === 0) return null;
  const choice = offered(open, widths);
  if (!choice) return <p class="small">{say("choice-ask")}</p>;
  const target = tenths(choice.target_tenths_mm);
  if ("no_fit" in choice) {
    return (
      <div class="note" role="status">
        <p>{say("choice-no-fit", { target })}</p>
        <p>{say("choice-no-fit-then")}</p>
      </div>
    );
  }
  const facts = { mm: String(choice.choice_mm), target, share: permille(choice.share_permille), fit: say(`fit-${choice.fit}`) };
  return (
    <p class="note" role="status">
      {say("choice-line", facts)} {choice.expect && say(`expect-${kebab(choice.expect)}`)}
    </p>
  );
}

/** What the width used means for this limb, where it is not the one offered. */
function usedLine(open: Open, widths: Props["widths"]): string | undefined {
  const { limb_circumference_mm: limb, cuff_width_mm: width } = setNow(open);
  if (limb === undefined || width === undefined) return undefined;
  const choice = offered(open, widths);
  if (choice && "choice_mm" in choice && choice.choice_mm === width) return undefined;
  const fit = cuffFit(open.measurement.species, limb, width, RULES.documents.cuff);
  const line = say("used-line", { mm: String(width), share: permille(fit.share_permille), fit: say(`fit-${fit.fit}`) });
  return fit.expect ? `${line} ${say(`expect-${kebab(fit.expect)}`)}` : line;
}

function WidthRow({ keeping, widths, best }: Pick<Props, "keeping" | "widths"> & { best: number | undefined }): JSX.Element {
  const head = keeping.head();
  const width = setNow(head).cuff_width_mm;
  const isOther = head.texts["width_other"] === "yes" || (width !== undefined && !widths.some(({ width_mm }) => width_mm === width));
  const answers = widths.map(({ width_mm, marks }) => ({ value: width_mm, below: [...(width_mm === best ? [say("width-best")] : []), ...marks].join(" · ") }));
  return (
    <fieldset class="choices">
      <legend>{say("field-width")}</legend>
      <div class="choice-row narrow">
        {answers.map(({ value, below }) => (
          <label class="choice" key={value}>
            <input type="radio" name="width" checked={!isOther && value === width} onChange={() => keeping.act((now) => used(now, value))} />
            <span class={value === best ? "width best" : "width"}>
              <strong>{value}</strong> {below && <small>{below}</small>}
            </span>
          </label>
        ))}
        <label class="choice">
          <input type="radio" name="width" checked={isOther} onChange={() => keeping.act(withOther)} />
          <span>{say(`width-${OTHER}`)}</span>
        </label>
      </div>
    </fieldset>
  );
}

/** The question; folded to the width once it is noted, with what it means where it is not the one offered. */
export function WidthChoice({ open, keeping, folds, widths }: Props): JSX.Element {
  const { cuff_width_mm: width } = setNow(open);
  const choice = offered(open, widths);
  const best = choice && "choice_mm" in choice ? choice.choice_mm : undefined;
  const isOther = keeping.head().texts["width_other"] === "yes" || (width !== undefined && !widths.some(({ width_mm }) => width_mm === width));
  return (
    <Fold folds={folds} question="width" label={say("field-width-short")} answer={width === undefined ? undefined : say("width-mm", { mm: String(width) })}
      note={usedLine(open, widths)}>
      <div class="stack">
        <Offer open={open} widths={widths} />
        <WidthRow keeping={keeping} widths={widths} best={best} />
        {isOther && <Typed open={open} keeping={keeping} field="width" mode="numeric" />}
        <Guide step="cuff" species={open.measurement.species} method={setNow(open).method} />
      </div>
    </Fold>
  );
}
