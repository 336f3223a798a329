/* What is half typed of a bag, on its way to the phone's disk: found again after a kill, and after leaving and coming straight back.
   One phone for all of it, should training begin or end while a write is under way. Draws nothing. */
import type { Phone } from "../../offline/journal";
import { keeperOf, type Keeper } from "../measure/keeper";
import { troubleCode } from "../measure/keeping";
import type { Edit } from "./bag_edit";

export type EditPhone = Pick<Phone, "remember" | "recall">;

/** A change of a bag and the keeper of it. */
export interface KeptEdit<P extends EditPhone = EditPhone> {
  readonly phone: P;
  /** The setting it is remembered by. */
  readonly name: string;
  readonly keeper: Keeper<Edit>;
  /** Resolves when what it began after is off the disk. */
  readonly cleared: Promise<void>;
}

function kept<P extends EditPhone>(phone: P, name: string, first: Edit, cleared: Promise<void>): KeptEdit<P> {
  const write = (edit: Edit): Promise<void> => cleared.then(() => phone.remember(name, edit));
  return { phone, name, cleared, keeper: keeperOf(first, write, troubleCode) };
}

/** Changes that were left, by phone and name, their last press on its way; one that could not be written is answered. */
const leaving = new WeakMap<EditPhone, Map<string, Promise<KeptEdit | undefined>>>();

/** The change under way on this phone, with all that was pressed in it; `begin` makes a new one where there is none. */
export async function openEdit<P extends EditPhone>(phone: P, name: string, begin: () => Edit | Promise<Edit>): Promise<KeptEdit<P>> {
  const unwritten = await leaving.get(phone)?.get(name);
  if (unwritten) return unwritten as KeptEdit<P>;
  const found = (await phone.recall(name)) as Edit | null | undefined;
  return kept(phone, name, found ?? (await begin()), Promise.resolve());
}

/** Begins anew: nothing of the former change stays, also not a press of it that is on its way to the disk. */
export function renewed<P extends EditPhone>({ phone, name, keeper }: KeptEdit<P>, first: Edit): KeptEdit<P> {
  const cleared = keeper.retry().then(() => phone.remember(name, null)).catch(() => undefined);
  return kept(phone, name, first, cleared);
}

/** Filings under way, by the change they file. */
const filings = new WeakMap<KeptEdit, Promise<void>>();

/** Files a change, with all that becomes of it after: whoever leaves meanwhile and comes back waits until that is over. */
export function whileFiled(edit: KeptEdit, file: () => Promise<void>): Promise<void> {
  const filing = file();
  filings.set(edit, filing.catch(() => undefined));
  return filing;
}

/** The screen was left: what could not be written is tried once more, and is there still for whoever comes back. */
export function leftEdit(edit: KeptEdit): void {
  const { phone, name, keeper, cleared } = edit;
  const isWritten = (): boolean => keeper.head() === keeper.shown.peek();
  const over = Promise.all([cleared, keeper.retry(), filings.get(edit)]).then(() => (isWritten() ? undefined : edit));
  leaving.set(phone, (leaving.get(phone) ?? new Map<string, Promise<KeptEdit | undefined>>()).set(name, over));
}
