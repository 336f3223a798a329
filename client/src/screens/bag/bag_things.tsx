/* Gauges, probes or machines of a bag: each with what is known of it in a line, to be changed or taken out. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { dayOnly } from "../../parts/figures";
import { itemBegun, listOf, MOST, takenOut, validatedOf, type ThingKind } from "./bag_edit";
import { ItemForm, openWords, type BagFields } from "./bag_item";

type Thing = ReturnType<typeof listOf>[number];

/** "Aneroid, validated for dogs, checked 3 Mar 2026" */
export function thingLine(kind: ThingKind, thing: Thing): string {
  const { checked_on_day: day, validated_by: by } = thing;
  return [
    kind === "gauges" && say(`gauge-${thing.type}`), say(`bag-line-validated-${validatedOf(thing)}`), by,
    day === undefined ? say("bag-line-not-checked") : say("bag-line-checked", { day: dayOnly(day) }),
  ].filter(Boolean).join(", ");
}

/** A row for each, and the way to one more. */
export function BagThings({ kind, keeper, edit, problems }: BagFields & { kind: ThingKind }): JSX.Element {
  const things = listOf(edit.body, kind);
  const { item } = edit;
  const form = item?.kind === kind && <ItemForm keeper={keeper} edit={edit} problems={problems} item={item} />;
  return (
    <section class="stack" aria-labelledby={`bag-${kind}`}>
      <h2 id={`bag-${kind}`}>{say(`bag-${kind}`)}</h2>
      {things.length === 0 && <p class="quiet">{say("bag-empty")}</p>}
      <ul>
        {things.map((thing, at) => (
          <li key={at}>
            <div class="bag-row">
              <button type="button" class="row" aria-label={say("bag-change", { what: thing.name })} onClick={() => keeper.act((head) => itemBegun(head, kind, at, openWords(head)))}>
                <strong>{thing.name}</strong>
                <span class="small">{thingLine(kind, thing)}</span>
              </button>
              <button
                type="button" class="button" aria-label={say("bag-remove-of", { what: thing.name })}
                onClick={() => keeper.act((head) => takenOut(head, kind, at, thing.name))}
              >
                {say("bag-remove")}
              </button>
            </div>
            {item?.at === at && form}
          </li>
        ))}
      </ul>
      {item?.at === undefined && form}
      {!form && things.length < MOST[kind] && (
        <button type="button" class="button" onClick={() => keeper.act((head) => itemBegun(head, kind, undefined, openWords(head)))}>{say(`bag-add-${kind}`)}</button>
      )}
    </section>
  );
}
