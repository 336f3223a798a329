/* One item of a bag being typed: a cuff's mark, or the name, kind, validation and last check of a thing. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { dayOnly } from "../../parts/figures";
import { KeptInput } from "../../parts/kept_input";
import { Wrong, type Problem } from "../../parts/problems";
import { TextField } from "../../parts/text_field";
import { DAY_PARTS, dayTyped, readDay, type DayPart } from "./bag_day";
import { checkedOf, itemGivenUp, itemPut, itemWith, type Edit, type ItemEdit, type Validated } from "./bag_edit";
import { dayOf } from "../animal/sites_not_used";
import type { Keeper } from "../measure/keeper";

export interface BagFields {
  keeper: Keeper<Edit>;
  edit: Edit;
  problems: readonly Problem[];
}

const VALIDATED: readonly Validated[] = ["unknown", "dog", "cat", "both", "none"];

/** What an item is called for the way back. */
export function itemWords(edit: Edit, item: ItemEdit): string {
  return item.kind === "cuffs" ? say("bag-cuff", { mm: String(item.at === undefined ? "" : edit.body.cuffs?.[item.at]?.width_mm) }) : item.name.trim();
}

/** What the open item is called, where there is one. */
export const openWords = (edit: Edit): string => (edit.item ? itemWords(edit, edit.item) : "");

/** The open item, under its row or at the end of its list. */
export function ItemForm({ keeper, edit, problems, item }: BagFields & { item: ItemEdit }): JSX.Element {
  const head = (): ItemEdit => keeper.head().item ?? item;
  const change = (part: Partial<ItemEdit>): void => void keeper.act((now) => itemWith(now, part));
  const text = (id: string, word: string, key: "name" | "mark" | "by", hint?: string): JSX.Element => (
    <TextField id={id} label={say(word)} hint={hint} mode="text" text={item[key]} newest={() => head()[key]} problems={problems} onText={(typed) => change({ [key]: typed })} />
  );
  return (
    <div class="bag-form stack">
      {item.kind === "cuffs" ? text("bag-mark", "bag-mark", "mark", say("bag-mark-hint")) : (
        <>
          {text("bag-thing-name", "bag-thing-name", "name")}
          {item.kind === "gauges" && (
            <Choices
              name="bag-type" label={say("bag-type")} value={head().type} onChoose={(type) => change({ type })}
              answers={(["aneroid", "digital"] as const).map((value) => ({ value, label: say(`gauge-${value}`) }))}
            />
          )}
          <Choices
            name="bag-validated" label={say("bag-validated")} value={head().validated} onChoose={(validated) => change({ validated })}
            answers={VALIDATED.map((value) => ({ value, label: say(`bag-validated-${value}`) }))}
          />
          {item.validated !== "unknown" && text("bag-by", "bag-validated-by", "by")}
          <LastCheck item={item} head={head} change={change} problems={problems} />
        </>
      )}
      <div class="side-by-side">
        <button type="button" class="button" onClick={() => keeper.act((now) => itemPut(now, openWords(now)))}>{say("bag-done")}</button>
        <button type="button" class="button" onClick={() => keeper.act(itemGivenUp)}>{say("bag-give-up")}</button>
      </div>
    </div>
  );
}

interface LastCheckProps {
  item: ItemEdit;
  head: () => ItemEdit;
  change: (part: Partial<ItemEdit>) => void;
  problems: readonly Problem[];
}

/** A day in three fields of the app's own: a browser's own field shows month and day in an order of its own choosing. */
function LastCheck({ item, head, change, problems }: LastCheckProps): JSX.Element {
  const { day } = readDay(checkedOf(item));
  const wrong = problems.find(({ field }) => field.startsWith("bag-checked-"))?.field;
  const field = (part: DayPart): JSX.Element => {
    const id = `bag-checked-${part}`;
    return (
      <div class="field" key={part} data-wrong={String(wrong === id)}>
        <label for={id}>{say(`day-${part}`)}</label>
        <KeptInput
          id={id} mode="numeric" text={checkedOf(item)[part]} newest={() => checkedOf(head())[part]} wrong={wrong === id}
          describedBy={wrong ? `${wrong}-wrong` : "bag-checked-hint"}
          onText={(text) => change({ checked: { ...checkedOf(head()), [part]: text } })}
        />
      </div>
    );
  };
  return (
    <fieldset class="stack">
      <legend>{say("bag-checked")}</legend>
      <p class="small quiet" id="bag-checked-hint">{say("bag-checked-hint")}</p>
      {wrong && <Wrong field={wrong} problems={problems} />}
      <div class="day-parts">{DAY_PARTS.map(field)}</div>
      {day !== undefined && <output class="echo" for="bag-checked-day bag-checked-month bag-checked-year">{dayOnly(day)}</output>}
      <button type="button" class="button" onClick={() => change({ checked: dayTyped(dayOf(Date.now())) })}>{say("bag-checked-today")}</button>
    </fieldset>
  );
}
