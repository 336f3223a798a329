/* Cuff: limb, bag, the choice with what to expect of it, the width that was really used, and where the cuff lies.
   The choice only offers; what goes into the record is the width a person says was used. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { permille, tenths } from "../../parts/figures";
import { TextField } from "../../parts/text_field";
import { chooseCuff, cuffFit } from "../../rules/cuff";
import { kebab } from "../../parts/word_ids";
import { readBag, withInstrument, withPlain, WIRE_LISTS } from "./fields";
import { AsLastTime } from "./as_last_time";
import { HeightChoice } from "./height_choice";
import { RULES } from "./judged";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, withText, type CuffSet, type Open } from "./open";
import { problemsToShow } from "./part_problems";
import { Typed } from "./typed";

interface Props {
  open: Open;
  keeping: Keeping;
  /** The bag as remembered on this phone, as typed. */
  bag: string;
  onBag: (text: string) => void;
  onDone: () => void;
}

type Inner = Pick<Props, "open" | "keeping">;

/** One question of the set, answered by a word of the wire document. */
function Question({ keeping, field, answers }: Pick<Props, "keeping"> & { field: "method" | "gauge" | "site" | "side" | "posture" | "restraint"; answers: readonly string[] }): JSX.Element {
  return (
    <Choices
      name={field}
      label={say(`field-${field}`)}
      answers={answers.map((value) => ({ value, label: say(`${field}-${kebab(value)}`) }))}
      value={setNow(keeping.head())[field]}
      onChoose={(value) => keeping.act((head) => changed(head, `field-${field}`, inSetNow(head, field), value))}
    />
  );
}

function used(open: Open, width_mm: number): Open {
  return changed({ ...open, texts: { ...open.texts, width: "", width_other: "" } }, "field-width", inSetNow(open, "cuff_width_mm"), width_mm);
}

/** What the bag offers for this limb. */
function FromTheBag({ open, keeping, widths }: Inner & { widths: number[] }): JSX.Element {
  const { limb_circumference_mm: limb } = setNow(open);
  if (widths.length === 0) return <p class="note">{say("choice-ask-bag")}</p>;
  if (limb === undefined) return <p class="note">{say("choice-ask")}</p>;
  const choice = chooseCuff(open.measurement.species, limb, widths, RULES.documents.cuff);
  if ("no_fit" in choice) return <p class="note">{say("choice-no-fit", { target: tenths(choice.target_tenths_mm) })}</p>;
  const facts = { mm: String(choice.choice_mm), target: tenths(choice.target_tenths_mm), share: permille(choice.share_permille), fit: say(`fit-${choice.fit}`) };
  return (
    <div class="note stack" role="status">
      <h2>{say("choice-title")}</h2>
      <p>{say("choice-line", facts)}</p>
      {choice.expect && <p>{say(`expect-${kebab(choice.expect)}`)}</p>}
      <button
        type="button"
        class="button"
        aria-pressed={setNow(open).cuff_width_mm === choice.choice_mm}
        onClick={() => keeping.act((head) => used(head, choice.choice_mm))}
      >
        {say("choice-take", facts)}
      </button>
    </div>
  );
}

/** The width really used: one of the bag, or another. */
function WidthUsed({ open, keeping, widths }: Inner & { widths: number[] }): JSX.Element {
  const head = keeping.head();
  const set = setNow(head);
  const other = head.texts["width_other"] === "yes" || (set.cuff_width_mm !== undefined && !widths.includes(set.cuff_width_mm));
  const value = other ? "other" : set.cuff_width_mm === undefined ? undefined : String(set.cuff_width_mm);
  return (
    <>
      <Choices
        narrow
        name="width"
        label={say("field-width")}
        answers={[...widths.map((mm) => ({ value: String(mm), label: String(mm) })), { value: "other", label: say("width-other") }]}
        value={value}
        onChoose={(chosen) =>
          keeping.act((now) =>
            chosen === "other"
              ? withPlain({ ...now, texts: { ...now.texts, width_other: "yes" } }, inSetNow(now, "cuff_width_mm"), undefined)
              : used(now, Number(chosen)),
          )
        }
      />
      {other && <Typed open={open} keeping={keeping} field="width" mode="numeric" />}
      <UsedFit open={open} set={setNow(open)} />
    </>
  );
}

/** Has its room before it has words: what stands below must not move away under a thumb. */
function UsedFit({ open, set }: { open: Open; set: CuffSet }): JSX.Element {
  const { limb_circumference_mm: limb, cuff_width_mm: width } = set;
  if (limb === undefined || width === undefined) return <p class="reserved" />;
  const fit = cuffFit(open.measurement.species, limb, width, RULES.documents.cuff);
  return (
    <p role="status" class="reserved">
      {say("used-line", { mm: String(width), share: permille(fit.share_permille), fit: say(`fit-${fit.fit}`) })}{" "}
      {fit.expect && say(`expect-${kebab(fit.expect)}`)}
    </p>
  );
}

/** Machine or probe, by whatever tells it from the others. */
function Instrument({ open, keeping }: Inner): JSX.Element {
  return (
    <TextField
      id="instrument"
      label={say("field-instrument")}
      hint={say("instrument-hint")}
      mode="text"
      text={open.texts["instrument"] ?? setNow(open).instrument ?? ""}
      newest={() => keeping.head().texts["instrument"] ?? setNow(keeping.head()).instrument ?? ""}
      problems={problemsToShow(open)}
      onText={(text) => keeping.act((head) => withInstrument(head, text))}
    />
  );
}

/** The second part. *Next* folds it; text that cannot be read is named first. */
export function CuffPart({ open, keeping, bag, onBag, onDone }: Props): JSX.Element {
  const set = setNow(open);
  const bagText = open.texts["bag"] ?? bag;
  const { widths, unread } = readBag(bagText);
  return (
    <div class="part">
      <AsLastTime open={open} keeping={keeping} />
      <Question keeping={keeping} field="method" answers={["doppler", "oscillometric"]} />
      <Typed
        open={open}
        keeping={keeping}
        field="circumference"
        hint={say("circumference-hint")}
      />
      <FromTheBag open={open} keeping={keeping} widths={widths} />
      <WidthUsed open={open} keeping={keeping} widths={widths} />
      <TextField
        id="bag"
        label={say("field-bag")}
        hint={say("bag-hint")}
        mode="text"
        echo={widths.length > 0 && unread === undefined ? say("echo-bag", { widths: widths.join(", ") }) : undefined}
        text={bagText}
        newest={() => keeping.head().texts["bag"] ?? bag}
        problems={problemsToShow(open)}
        onText={(text) => {
          onBag(text);
          keeping.act((head) => withText(head, "bag", text));
        }}
      />
      <Question keeping={keeping} field="site" answers={WIRE_LISTS.site} />
      <Question keeping={keeping} field="side" answers={["left", "right"]} />
      <Question keeping={keeping} field="posture" answers={WIRE_LISTS.posture} />
      <Question keeping={keeping} field="restraint" answers={WIRE_LISTS.restraint} />
      <HeightChoice open={open} keeping={keeping} />
      {set.method === "doppler" && <Question keeping={keeping} field="gauge" answers={["aneroid", "digital"]} />}
      <Instrument open={open} keeping={keeping} />
      <button type="button" class="button act wide" onClick={onDone}>
        {say("cuff-next")}
      </button>
    </div>
  );
}

