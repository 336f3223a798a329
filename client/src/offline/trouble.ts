/**
 * The one error this room throws: a code the screens turn into a sentence, with the place it concerns.
 * It must not carry typed content: codes end up in logs.
 */
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
