/* Cuff, in the order of the work: as last time, method, where it lies, the limb, the choice from the bag and the width used, posture,
   level with the heart, gauge and instrument. Answered ones are lines. Only sets the order; each question is a file of its own. */
import type { JSX } from "preact";
import "../../contract/cuff_words";
import { say } from "../../contract/words";
import { Guide } from "../../parts/guide";
import { AsLastTime } from "./as_last_time";
import { bagText, BagLine, isTyped } from "./bag_line";
import { instrumentsOf, widthsOf } from "./carried";
import { useCuffFacts, type CuffFacts } from "./cuff_facts";
import { openedWith, Question, unanswered, useFolds, type QuestionId } from "./cuff_question";
import { EarlierSets } from "./earlier_sets";
import { readBag, WIRE_LISTS } from "./fields";
import { HeightChoice } from "./height_choice";
import { GaugeChoice, InstrumentChoice } from "./instrument_choice";
import type { Keeping } from "./keeping";
import { LimbField } from "./limb_field";
import { setNow, type Open } from "./open";
import { SiteChoice } from "./site_choice";
import { POSTURES } from "./sites";
import { WidthChoice } from "./width_choice";

interface Props {
  open: Open;
  keeping: Keeping;
  onDone: () => void;
}

/** The third part, once the phone's bag and the animal's sites were read. *Next* folds it; text that cannot be read is named first. */
export function CuffPart(props: Props): JSX.Element | null {
  const facts = useCuffFacts(props.open.measurement.patient);
  return facts ? <Asked key={props.open.measurement.sets.length} {...props} facts={facts} /> : null;
}

/** Widths of the bag in use, or those typed where there is none. */
function widthsNow(open: Open, facts: CuffFacts): ReturnType<typeof widthsOf> {
  if (!isTyped(open, facts)) return widthsOf(facts.bag);
  return readBag(bagText(open, facts)).widths.map((width_mm) => ({ width_mm, marks: [] }));
}

/** Asked rarely: folded from the start, but for an instrument the bag offers. */
function rare(open: Open, facts: CuffFacts): QuestionId[] {
  return ["restraint", ...(instrumentsOf(facts.bag, setNow(open).method).length > 0 ? [] : (["instrument"] as const))];
}

function left(open: Open, facts: CuffFacts): QuestionId[] {
  return unanswered(open, rare(open, facts));
}

function firstOpen(open: Open, facts: CuffFacts): QuestionId[] {
  const isOffered = open.last !== undefined && open.measurement.sets.length === 1 && !setNow(open).site;
  return [...(isOffered ? [] : openedWith(left(open, facts))), ...(facts.bags.length > 1 && !facts.chosen ? (["bag"] as const) : [])];
}

function Asked({ open, keeping, facts, onDone }: Props & { facts: CuffFacts }): JSX.Element {
  const { species } = open.measurement;
  const folds = useFolds(() => firstOpen(open, facts), () => left(keeping.head(), facts));
  const { method } = setNow(open);
  return (
    <div class="part cuff">
      {facts.unopened.map((what) => <p key={what} class="note" role="alert">{say(`cuff-unopened-${what}`)}</p>)}
      <EarlierSets open={open} keeping={keeping} />
      <AsLastTime open={open} keeping={keeping} today={facts} onTaken={(next) => folds.only(openedWith(left(next, facts)))} />
      <Question keeping={keeping} folds={folds} field="method" answers={["doppler", "oscillometric"]} />
      <SiteChoice open={open} keeping={keeping} folds={folds} barred={facts.barred} />
      <LimbField open={open} keeping={keeping} folds={folds} />
      <BagLine open={open} keeping={keeping} facts={facts} folds={folds} />
      <WidthChoice open={open} keeping={keeping} folds={folds} widths={widthsNow(open, facts)} />
      <Question keeping={keeping} folds={folds} field="posture" answers={POSTURES[species]}>
        <Guide step="posture" species={species} method={method} />
      </Question>
      <HeightChoice open={open} keeping={keeping} folds={folds} />
      {method === "doppler" && <GaugeChoice keeping={keeping} folds={folds} bag={facts.bag} />}
      <InstrumentChoice open={open} keeping={keeping} folds={folds} bag={facts.bag} />
      <Question keeping={keeping} folds={folds} field="restraint" answers={WIRE_LISTS.restraint} />
      <div class="file-foot stays">
        <button type="button" class="button act wide" onClick={onDone}>
          {say("cuff-next")}
        </button>
      </div>
    </div>
  );
}
