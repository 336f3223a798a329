/* The bag the Cuff part chooses from: its name, another one by a tap, or, without any, the widths typed in, which can be kept as a bag. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { TextField } from "../../parts/text_field";
import { bodyOf } from "../bag/bag_in_use";
import { oneAtATime } from "../one_at_a_time";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import type { CuffFacts } from "./cuff_facts";
import { Fold, type Folds } from "./cuff_question";
import { readBag } from "./fields";
import type { Keeping } from "./keeping";
import { withText, type Open } from "./open";
import { problemsToShow } from "./part_problems";

interface Props {
  open: Open;
  keeping: Keeping;
  facts: CuffFacts;
}

/** Text that could not be read is never hidden by a bag that came in meanwhile. */
export function isTyped(open: Open, facts: CuffFacts): boolean {
  return facts.bags.length === 0 || readBag(open.texts["bag"] ?? "").unread !== undefined;
}

/** What was typed for the bag, in this measurement or on this phone before. */
export function bagText(open: Open, facts: CuffFacts): string {
  return open.texts["bag"] ?? facts.typed;
}

export function BagLine(props: Props & { folds: Folds }): JSX.Element | null {
  const { open, facts, folds } = props;
  if (!isTyped(open, facts)) return <WhichBag {...props} />;
  const isAsked = folds.isOpen("limb") || folds.isOpen("width") || readBag(bagText(open, facts)).unread !== undefined;
  return isAsked ? <TypedBag {...props} /> : null;
}

function WhichBag({ facts, folds }: { facts: CuffFacts; folds: Folds }): JSX.Element {
  const { bags, chosen } = facts;
  return (
    <div class="with-link">
      <Fold folds={folds} question="bag" label={say("field-bag-in-use")} answer={chosen && bodyOf(chosen).name}>
        <Choices
          name="bag-in-use"
          label={say("field-bag-in-use")}
          answers={bags.map((bag) => ({ value: bag.id, label: bodyOf(bag).name }))}
          value={chosen?.id}
          onChoose={(id) => void facts.choose(id)}
        />
      </Fold>
      <a class="link" href="#/bag">{say("bag-open")}</a>
    </div>
  );
}

function TypedBag({ open, keeping, facts }: Props): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const busy = useRef(false);
  const text = bagText(open, facts);
  const { widths, unread } = readBag(text);
  const keep = async (): Promise<void> => {
    try {
      await facts.keepAsBag(widths);
      await keeping.act((head) => withText(head, "bag", ""));
    } catch (failure) {
      setTrouble(storageWord(failure));
    }
  };
  return (
    <div class="stack">
      <TextField
        id="bag"
        label={say("field-bag")}
        hint={say("bag-hint")}
        mode="text"
        echo={widths.length > 0 && unread === undefined ? say("echo-bag", { widths: widths.join(", ") }) : undefined}
        text={text}
        newest={() => keeping.head().texts["bag"] ?? facts.typed}
        problems={problemsToShow(open)}
        onText={(next) => {
          facts.keepTyped(next);
          void keeping.act((head) => withText(head, "bag", next));
        }}
      />
      <StorageProblem word={trouble} />
      {widths.length > 0 && unread === undefined && facts.bags.length === 0 && (
        <button type="button" class="button" onClick={() => void oneAtATime(busy, keep)}>
          {say("bag-keep")}
        </button>
      )}
    </div>
  );
}
