/* A second look, where the rules advise one: one tap begins a quiet time in this draft, and the readings go on in the same set. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Assessment } from "../../rules/assessment";
import { RULES } from "./judged";
import type { Keeping } from "./keeping";
import { type Open } from "./open";
import { secondLook } from "./series";
import { secondLookLeft_s } from "./since";

/** How long it is to be, in s. */
export const SECOND_LOOK_S = RULES.documents.agreement.numbers.second_look.rest_s;

/** Whether one is advised and none has begun since the latest reading. */
export function offersSecondLook(open: Open, { advice, result_set }: Assessment): boolean {
  return advice === "second_look" && result_set === open.measurement.sets.length - 1 && secondLookLeft_s(open, Date.now()) === undefined;
}

/** The button that begins it. */
export function SecondLook({ keeping, look }: { keeping: Keeping; look: string }): JSX.Element {
  const begin = (): void => {
    const now_ms = Date.now();
    void keeping.act((head) => secondLook(head, now_ms, SECOND_LOOK_S));
  };
  return (
    <button type="button" class={look} onClick={begin}>
      {say("second-look", { minutes: String(SECOND_LOOK_S / 60) })}
    </button>
  );
}
