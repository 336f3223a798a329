/**
 * The one error this room throws: a code the screens turn into a sentence, with the place it concerns.
 * It must not carry typed content: codes end up in logs.
 */
import type { StorageTrouble } from "./phone_types.ts";

export class PhoneTrouble extends Error {
  /**
   * @param code stable word: `sign_in_needed`, `already_filed`, `not_valid`, `too_large`, `wrong_login`, `wait`,
   *   `blocked`, `reload_needed`, `lost`, `full`, or a NetworkTrouble
   * @param path JSON Pointer into the letter, where the code is about one field
   * @param why the contract's own word for what is wrong there
   */
  constructor(
    readonly code: string,
    readonly path = "",
    readonly why = "",
  ) {
    super(why === "" ? code : `${code} ${path} ${why}`);
    this.name = "PhoneTrouble";
  }
}

const STORAGE_TROUBLES: readonly string[] = ["blocked", "reload_needed", "lost", "full"] satisfies StorageTrouble[];

/** What is wrong with the store, where that is what was thrown. */
export function storageTroubleOf(thrown: unknown): StorageTrouble | undefined {
  if (!(thrown instanceof PhoneTrouble) || !STORAGE_TROUBLES.includes(thrown.code)) return undefined;
  return thrown.code as StorageTrouble;
}
