/* The cuffs of a bag: typed quickly as widths, each to be marked or taken out. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { TextField } from "../../parts/text_field";
import { itemBegun, listOf, takenOut, triedAgain, widthsAdded } from "./bag_edit";
import { ItemForm, openWords, type BagFields } from "./bag_item";
import { readBag } from "../measure/fields";

/** A row for each cuff, and the field that adds more. */
export function BagCuffs({ keeper, edit, problems }: BagFields): JSX.Element {
  const cuffs = listOf(edit.body, "cuffs");
  const { widths, unread } = readBag(edit.widths);
  const add = (): void => void keeper.act((head) => (readBag(head.widths).unread === undefined ? widthsAdded(head) : triedAgain(head)));
  return (
    <section class="stack" aria-labelledby="bag-cuffs">
      <h2 id="bag-cuffs">{say("bag-cuffs")}</h2>
      {cuffs.length === 0 && <p class="quiet">{say("bag-empty")}</p>}
      <ul>
        {cuffs.map(({ width_mm, mark }, at) => {
          const what = mark ? say("bag-cuff-marked", { mm: String(width_mm), mark }) : say("bag-cuff", { mm: String(width_mm) });
          return (
            <li key={at}>
              <div class="bag-row cuff-row">
                <button type="button" class="row" aria-label={say("bag-change", { what })} onClick={() => keeper.act((head) => itemBegun(head, "cuffs", at, openWords(head)))}>
                  {what}
                </button>
                <button type="button" class="button" aria-label={say("bag-remove-of", { what })} onClick={() => keeper.act((head) => takenOut(head, "cuffs", at, what))}>
                  {say("bag-remove")}
                </button>
              </div>
              {edit.item?.kind === "cuffs" && edit.item.at === at && <ItemForm keeper={keeper} edit={edit} problems={problems} item={edit.item} />}
            </li>
          );
        })}
      </ul>
      <div class="with-button">
        <TextField
          id="bag-widths" label={say("bag-widths")} hint={say("bag-widths-hint")} mode="text" problems={problems}
          echo={widths.length > 0 && unread === undefined ? say("echo-bag", { widths: widths.join(", ") }) : undefined}
          text={edit.widths} newest={() => keeper.head().widths}
          onText={(text) => keeper.act((head) => ({ ...head, widths: text, dirty: true }))}
          onEnter={add}
        />
        <button type="button" class="button" onClick={add}>{say("bag-widths-add")}</button>
      </div>
    </section>
  );
}
