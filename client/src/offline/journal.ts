/**
 * The door of this room for the screens: opens the phone's own record and hands out what can be asked of it.
 * Every word typed goes through here on its way to the disk; nothing is shown as saved before its promise resolved.
 */
import type { Phone } from "./phone_types";

export type * from "./phone_types";
export { PhoneTrouble } from "./trouble";

/** Makes an id for a draft or a letter: UUIDv7, lower case. */
export declare function newId(): string;

/** Opens the store, unwraps the data key and finds out who last signed in. Throws PhoneTrouble blocked, lost, full. */
export declare function openPhone(): Promise<Phone>;
