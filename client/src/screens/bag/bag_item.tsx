/* One item of a bag being typed: a cuff's mark, or the name, kind, validation and last check of a thing. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { DAY_MS } from "../../parts/figures";
import type { Problem } from "../../parts/problems";
import { TextField } from "../../parts/text_field";
import { itemGivenUp, itemPut, itemWith, itemWithoutDay, type Edit, type ItemEdit, type Validated } from "./bag_edit";
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
          <LastCheck keeper={keeper} day={item.day} />
        </>
      )}
      <div class="side-by-side">
        <button type="button" class="button" onClick={() => keeper.act((now) => itemPut(now, now.item ? itemWords(now, now.item) : ""))}>{say("bag-done")}</button>
        <button type="button" class="button" onClick={() => keeper.act(itemGivenUp)}>{say("bag-give-up")}</button>
      </div>
    </div>
  );
}

function LastCheck({ keeper, day }: Pick<BagFields, "keeper"> & { day: number | undefined }): JSX.Element {
  const put = (value: number | undefined): void =>
    void keeper.act((now) => (value === undefined || Number.isNaN(value) ? itemWithoutDay(now) : itemWith(now, { day: value })));
  return (
    <div class="with-button">
      <div class="field">
        <label for="bag-checked">{say("bag-checked")}</label>
        <input
          id="bag-checked" type="date" value={day === undefined ? "" : new Date(day * DAY_MS).toISOString().slice(0, 10)}
          onChange={(event) => put(event.currentTarget.value ? Date.parse(event.currentTarget.value) / DAY_MS : undefined)}
        />
      </div>
      <button type="button" class="button" onClick={() => put(dayOf(Date.now()))}>{say("bag-checked-today")}</button>
    </div>
  );
}
