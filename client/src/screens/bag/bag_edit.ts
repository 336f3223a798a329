/* A bag being changed: the whole new wording of it, what is half-typed, and the acts that can be taken back. Plain JSON, so that a
   killed tab finds it again; saving makes one letter of it. Pure; knows no screen and no store. */
import { done, undone, type Act, type Patch, type Plain } from "../measure/undo";
import { readBag } from "../measure/fields";
import { dayTyped, readDay, type DayTyped } from "./bag_day";
import type { BagBody } from "./bag_in_use";

export type ThingKind = "gauges" | "detectors" | "machines";
export type ItemKind = "cuffs" | ThingKind;
export type Validated = "unknown" | "dog" | "cat" | "both" | "none";

type Thing = NonNullable<BagBody["gauges"]>[number];
type Cuff = NonNullable<BagBody["cuffs"]>[number];

/** One item being typed: a new one, or the one at `at`. For a cuff `name` is its width and `mark` its mark. */
export interface ItemEdit {
  kind: ItemKind;
  at?: number;
  name: string;
  mark: string;
  type: "aneroid" | "digital";
  validated: Validated;
  by: string;
  /** Days since 1970-01-01, or nothing: as it stood before `checked` was typed. */
  day?: number;
  /** The day of the last check as typed. */
  checked?: DayTyped;
}

export interface Edit {
  /** The bag's first letter; absent for a new bag. */
  id?: string;
  /** What the letter of a new bag will be called. */
  as?: string;
  /** The wording the change began from. */
  from?: string;
  body: BagBody;
  /** The bag's name as typed, and the widths typed and not added yet. */
  name: string;
  widths: string;
  item?: ItemEdit;
  dirty: boolean;
  /** How often a save was tried in vain: what is missing is said from then on. An earlier build kept `true` for once or more. */
  tried?: number | true;
  acts: Act[];
}

export const MOST: Record<ItemKind, number> = { cuffs: 30, gauges: 10, detectors: 10, machines: 10 };
export const THINGS: readonly ThingKind[] = ["gauges", "detectors", "machines"];
const LONGEST = { name: 60, mark: 40, by: 120 };

/** A change of a bag as it stands, or of a new one that begins with widths kept by an earlier build. */
export function begun(card: { id: string; letter: { id: string }; body: BagBody } | undefined, name: string, typed: string): Edit {
  if (card) return { id: card.id, from: card.letter.id, body: card.body, name: card.body.name, widths: "", dirty: false, acts: [] };
  const { widths, unread } = readBag(typed);
  const cuffs = widths.slice(0, MOST.cuffs).map((width_mm) => ({ width_mm }));
  return { body: { name, ...(cuffs.length > 0 ? { cuffs } : {}) }, name, widths: unread ?? "", dirty: cuffs.length > 0, acts: [] };
}

/** The list of a kind, empty where none is noted. */
export function listOf(body: BagBody, kind: ItemKind): readonly (Cuff & Thing)[] {
  return (body[kind] ?? []) as readonly (Cuff & Thing)[];
}

/** The open item stays open with its row, wherever that stands now; it goes with a row taken out. */
function following(item: ItemEdit, kind: ItemKind, before: readonly object[], list: readonly object[]): ItemEdit | undefined {
  const row = item.kind === kind && item.at !== undefined ? before[item.at] : undefined;
  if (!row) return item;
  const at = list.indexOf(row);
  return at < 0 ? undefined : { ...item, at };
}

function withList(edit: Edit, kind: ItemKind, list: readonly object[], word: string, what: string): Edit {
  const patch: Patch = list.length > 0 ? { at: ["body", kind], to: list as unknown as Plain } : { at: ["body", kind] };
  const { item: open, ...rest } = edit;
  const item = open && following(open, kind, listOf(edit.body, kind), list);
  return { ...done<Omit<Edit, "item">>(rest, word, { what }, [patch]), dirty: true, ...(item ? { item } : {}) };
}

/** The typed widths join the bag, ascending; what cannot be read stays in its field. */
export function widthsAdded(edit: Edit): Edit {
  const { widths, unread } = readBag(edit.widths);
  const room = MOST.cuffs - listOf(edit.body, "cuffs").length;
  if (unread !== undefined || widths.length === 0 || widths.length > room) return edit;
  const cuffs = [...listOf(edit.body, "cuffs"), ...widths.map((width_mm) => ({ width_mm }))].sort((one, other) => one.width_mm - other.width_mm);
  return withList({ ...edit, widths: "" }, "cuffs", cuffs, "bag-act-in", widths.map((mm) => `${mm} mm`).join(", "));
}

/** Takes an item out; `what` names it for the way back. */
export function takenOut(edit: Edit, kind: ItemKind, at: number, what: string): Edit {
  return withList(edit, kind, listOf(edit.body, kind).filter((_one, place) => place !== at), "bag-act-out", what);
}

const VALIDATED: Record<Exclude<Validated, "unknown">, ("dog" | "cat")[]> = { dog: ["dog"], cat: ["cat"], both: ["dog", "cat"], none: [] };

/** For whom a thing was validated, in one word. */
export function validatedOf({ validated_in: species }: Pick<Thing, "validated_in">): Validated {
  if (!species) return "unknown";
  if (species.length === 0) return "none";
  return species.includes("dog") ? (species.includes("cat") ? "both" : "dog") : "cat";
}

function itemOf(body: BagBody, kind: ItemKind, at?: number): ItemEdit {
  const one = at === undefined ? undefined : listOf(body, kind)[at];
  return {
    kind, ...(at === undefined ? {} : { at }),
    name: kind === "cuffs" ? String(one?.width_mm ?? "") : (one?.name ?? ""), mark: one?.mark ?? "", type: one?.type ?? "aneroid",
    validated: one ? validatedOf(one) : "unknown", by: one?.validated_by ?? "",
    ...(one?.checked_on_day === undefined ? {} : { day: one.checked_on_day }),
  };
}

function isUntyped(item: ItemEdit, body: BagBody): boolean {
  const stood = itemOf(body, item.kind, item.at);
  return !item.checked && (["name", "mark", "type", "validated", "by"] as const).every((key) => item[key] === stood[key]);
}

/**
 * Begins to type an item: a new one, or the one at `at`. What is typed in another goes into the bag first, as `what`; one with a
 * problem stays open instead.
 */
export function itemBegun(edit: Edit, kind: ItemKind, at?: number, what = ""): Edit {
  const { item: open } = edit;
  if (open?.kind === kind && open.at === at) return edit;
  const calm = !open || isUntyped(open, edit.body) ? itemGivenUp(edit) : itemPut(edit, what);
  return calm.item ? calm : { ...calm, item: itemOf(calm.body, kind, at) };
}

/** The item with something typed or chosen. */
export function itemWith(edit: Edit, part: Partial<ItemEdit>): Edit {
  return edit.item ? { ...edit, dirty: true, item: { ...edit.item, ...part } } : edit;
}

/** The day of the last check of an item, as typed or as it stood. */
export function checkedOf({ checked, day }: ItemEdit): DayTyped {
  return checked ?? dayTyped(day);
}

/** Closes the item and keeps nothing of what was typed. */
export function itemGivenUp(edit: Edit): Edit {
  const { item: _item, ...rest } = edit;
  return rest;
}

function madeOf(item: ItemEdit, before: Cuff | undefined): object {
  const [name, by, mark] = [item.name.trim(), item.by.trim(), item.mark.trim()];
  if (item.kind === "cuffs") return { width_mm: before?.width_mm, ...(mark ? { mark } : {}) };
  const { day } = readDay(checkedOf(item));
  return {
    name, ...(item.kind === "gauges" ? { type: item.type } : {}),
    ...(item.validated === "unknown" ? {} : { validated_in: VALIDATED[item.validated] }),
    ...(by ? { validated_by: by } : {}), ...(day === undefined ? {} : { checked_on_day: day }),
  };
}

/** A save was tried. */
export function triedAgain(edit: Edit): Edit {
  return { ...edit, tried: Number(edit.tried ?? 0) + 1 };
}

/** A save failed. A new bag whose id another letter has is called anew, so that the next save files it. */
export function afterFailed(edit: Edit, failure: unknown, newId: () => string): Edit {
  const isTaken = (failure as { code?: unknown } | undefined)?.code === "already_filed";
  return isTaken && edit.id === undefined ? { ...edit, as: newId() } : edit;
}

/** Puts the item into the bag; one with a problem stays open. */
export function itemPut(edit: Edit, what: string): Edit {
  const { item } = edit;
  if (!item || itemProblems(item).length > 0) return triedAgain(edit);
  const list = listOf(edit.body, item.kind);
  const made = madeOf(item, item.at === undefined ? undefined : list[item.at]);
  const next = item.at === undefined ? [...list, made] : list.map((one, at) => (at === item.at ? made : one));
  const { tried: _tried, item: _item, ...calm } = edit;
  return withList(calm, item.kind, next, item.at === undefined ? "bag-act-in" : "bag-act-changed", what);
}

/** Takes the latest act back, unless an item is open: it is known by its place in a list that would change under it. */
export function takenBack(edit: Edit): Edit {
  return edit.item ? edit : undone(edit)[0];
}

/** A problem of a field: the field, the word of its sentence and facts; a `field` fact is a word id. */
export interface EditProblem {
  field: string;
  word: string;
  facts: Record<string, string>;
}

function tooLong(field: string, word: string, text: string, most: number): EditProblem[] {
  return [...text.trim()].length > most ? [{ field, word: "ask-too-long", facts: { field: word, most: String(most) } }] : [];
}

function dayProblem(item: ItemEdit): EditProblem[] {
  const { wrong, no_such } = readDay(checkedOf(item));
  return wrong ? [{ field: `bag-checked-${wrong}`, word: no_such ? "ask-no-such-day" : "ask-day", facts: {} }] : [];
}

/** What is missing, too long or not readable of the item. */
export function itemProblems(item: ItemEdit): EditProblem[] {
  if (item.kind === "cuffs") return tooLong("bag-mark", "bag-mark", item.mark, LONGEST.mark);
  return [
    ...(item.name.trim() ? [] : [{ field: "bag-thing-name", word: "ask-thing-name", facts: {} }]),
    ...tooLong("bag-thing-name", "bag-thing-name", item.name, LONGEST.name), ...tooLong("bag-by", "bag-validated-by", item.by, LONGEST.by),
    ...dayProblem(item),
  ];
}

/** Everything that keeps the bag from being saved. */
export function editProblems(edit: Edit): EditProblem[] {
  const { unread, widths } = readBag(edit.widths);
  const full = listOf(edit.body, "cuffs").length + widths.length > MOST.cuffs;
  return [
    ...(edit.name.trim() ? [] : [{ field: "bag-name", word: "ask-bag-name", facts: {} }]), ...tooLong("bag-name", "bag-name", edit.name, LONGEST.name),
    ...(unread === undefined ? [] : [{ field: "bag-widths", word: "ask-bag", facts: { field: "field-bag", piece: unread } }]),
    ...(unread === undefined && full ? [{ field: "bag-widths", word: "ask-bag-full", facts: { most: String(MOST.cuffs) } }] : []),
    ...(edit.item ? itemProblems(edit.item) : []),
  ];
}

/** The whole new wording, with what is typed in it; call it only without problems. `what` names an item that is still open. */
export function wordingOf(edit: Edit, what: string): BagBody {
  const all = widthsAdded(edit.item ? itemPut(edit, what) : edit);
  return { ...all.body, name: all.name.trim() };
}
