/* Which half-typed forms a killed tab left on this phone. Small on purpose: the round asks it before the first paint. */
import type { Draft, Phone } from "../offline/journal";
import { thePhone } from "./place";

/** The text typed and the answers chosen, by field. */
export interface Filled {
  readonly texts: Readonly<Record<string, string>>;
  readonly chosen: Readonly<Record<string, string>>;
}

/** What a form holds, as it is kept. */
export interface Form extends Filled {
  readonly form: true;
  /** What it is about, such as `new` or `who/<animal>`. */
  readonly about: string;
  /** What stood in it when it was begun: by that, what was typed here is told from what somebody saved meanwhile. */
  readonly before?: Filled;
  /** Of a form kept by an earlier build, which had no `before`: the facts, by their first field, that `before` tells by now. */
  readonly knows?: readonly string[];
  /** The fields taken over since, because somebody saved them anew and nothing was typed in them here. */
  readonly taken?: readonly string[];
}

/** The lock by which a window holds a form. */
export const nameOfLock = (id: string): string => `quietcuff-form-${id}`;

async function heldElsewhere(): Promise<ReadonlySet<string | undefined>> {
  if (!("locks" in navigator)) return new Set();
  return new Set((await navigator.locks.query()).held?.map(({ name }) => name));
}

export const isAbout = (about: string) => ({ content }: Draft): boolean => (content as Form).about === about;

/** A new animal that was being added at the filing of a measurement which is gone meanwhile: its form has no other way back. */
export function isOrphan({ content }: Draft, drafts: readonly Draft[]): boolean {
  const [kind, measurement] = (content as Form).about.split("/");
  return kind === "new" && measurement !== undefined && drafts.every(({ id }) => id !== measurement);
}

/** Whether a form about this was begun and left by a killed tab. */
export async function isBegun(about: string, phone: Phone = thePhone()): Promise<boolean> {
  const held = await heldElsewhere();
  return (await phone.forms()).some((form) => isAbout(about)(form) && !held.has(nameOfLock(form.id)));
}
