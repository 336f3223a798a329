/* The phone's record, opened once, for every screen. Must not keep anything of its own. */
import type { Phone } from "../offline/journal";

let opened: Phone | undefined;

/** Hands the opened phone to the screens; called once at start. */
export function usePhoneOf(phone: Phone): void {
  opened = phone;
}

/** The opened phone. Throws when a screen is drawn before it was opened, which would be a mistake of ours. */
export function thePhone(): Phone {
  if (!opened) throw new Error("the phone's record is not open yet");
  return opened;
}
