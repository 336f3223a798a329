/* Who works on this phone, and the way out; what is not sent is named before it. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { say } from "../contract/words";
import { theRecord } from "./place";

export function WhoHere(): JSX.Element | null {
  const [asked, setAsked] = useState(false);
  const { who, status } = theRecord();
  if (!who.value) return null;
  const { unsent } = status.value;
  const out = (): void => {
    if (unsent > 0 && !asked) setAsked(true);
    else void theRecord().signOut();
  };
  return (
    <section class="stack">
      <p>{say("signed-in-as", { person: who.value.personName, practice: who.value.practiceName })}</p>
      {asked && <p role="alert">{say("sign-out-unsent", { n: unsent })}</p>}
      <button type="button" class="button" onClick={out}>
        {say(asked ? "sign-out-really" : "sign-out")}
      </button>
    </section>
  );
}
