/* The phone every screen asks: the record, or training while that is open. Must not keep anything of its own. */
import { signal } from "@preact/signals";
import type { Phone } from "../offline/journal";

const opened = signal<Phone | undefined>(undefined);
let record: Phone | undefined;

/** Hands a phone to the screens. The first one is the record, and stays it whatever is shown later. */
export function usePhoneOf(phone: Phone): void {
  record ??= phone;
  opened.value = phone;
}

/** The phone shown. Throws when a screen is drawn before it was opened, which would be a mistake of ours. */
export function thePhone(): Phone {
  if (!opened.value) throw new Error("the phone's record is not open yet");
  return opened.value;
}

/** The record, in training too: for what belongs to this phone and its people and not to what is measured. */
export function theRecord(): Phone {
  if (!record) throw new Error("the phone's record is not open yet");
  return record;
}
