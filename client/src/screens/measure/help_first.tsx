/* Help first: what stands in the place of the whole part when the animal is in trouble (row 0 of the next step, common practice).
   Measuring stays possible, by an explicit tap only. Must not say how to treat. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Keeping } from "./keeping";
import type { Open } from "./open";
import { asksNotToday } from "./outcome";
import { allTheSame, askedAgain, helpFirst, sedatedOnPurpose } from "./ready";

const SIGNS = [1, 2, 3, 4] as const;

export function HelpFirst({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  return (
    <div class="part">
      <div class="help-first stack" role="alert">
        <h2>{say("help-first-title")}</h2>
        <p>{say("help-first-signs")}</p>
        <ul class="plain-list">{SIGNS.map((n) => <li key={n}>{say(`help-first-sign-${n}`)}</li>)}</ul>
        <p><strong>{say("help-first-then")}</strong></p>
        <p class="small">{say("help-first-basis")}</p>
      </div>
      <button type="button" class="button act wide" onClick={() => keeping.act(asksNotToday)}>
        {say("not-today")}
      </button>
      <button type="button" class="button wide" onClick={() => keeping.act(askedAgain)}>
        {say("help-first-change")}
      </button>
      {helpFirst(open) === "awake" && (
        <button type="button" class="button wide" onClick={() => keeping.act(sedatedOnPurpose)}>
          {say("help-first-sedated")}
        </button>
      )}
      <button type="button" class="button wide" onClick={() => keeping.act(allTheSame)}>
        {say("help-first-same")}
      </button>
    </div>
  );
}
