/* Whether this phone buzzes once when a quiet time is over: off unless asked for, and nothing where a phone cannot. */
import type { JSX } from "preact";
import { sayHelp } from "../contract/help_words";
import { canBuzz, chooseBuzz, mayBuzz } from "./buzz";
import { Choices } from "./choices";

export function BuzzChoice(): JSX.Element | null {
  if (!canBuzz()) return null;
  const answers = (["silent", "once"] as const).map((value) => ({ value, label: sayHelp(`buzz-${value}`) }));
  return (
    <Choices
      name="buzz"
      label={sayHelp("buzz-title")}
      answers={answers}
      value={mayBuzz.value ? "once" : "silent"}
      onChoose={(value) => chooseBuzz(value === "once")}
    />
  );
}
