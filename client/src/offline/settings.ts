/**
 * The small settings of one practice on this phone (whose bag was used last), boxed like everything else.
 * It makes and reads their rows; writing them is for the pen. Nothing here travels.
 */
import { open, seal } from "./boxes.ts";
import type { MetaRow } from "./rows.ts";
import { type Shelf, readMeta } from "./sync_store.ts";

/** The row of a setting, sealed: ready to be written. */
export async function settingRow({ key }: Shelf, name: string, value: unknown): Promise<MetaRow> {
  const row = rowName(key.practice, name);
  return { name: row, box: await seal(key, "meta", row, value) };
}

/** undefined when it was never written. */
export async function readSetting({ key, outbox }: Shelf, name: string): Promise<unknown> {
  const row = rowName(key.practice, name);
  const found = await readMeta(outbox, row);
  return found?.box && open(key, "meta", row, found.box);
}

/** The name of a setting's row, for the pen. */
export function settingName({ key }: Shelf, name: string): string {
  return rowName(key.practice, name);
}

/** By practice: two practices on one phone must not write over each other's. */
function rowName(practice: string, name: string): string {
  return `own:${practice}/${name}`;
}
