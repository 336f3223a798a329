/* The last visit's method, limb, posture, cuff and instrument in one tap: only what was done alike can be compared.
   It offers, says what differs today, and fills in nothing before the tap. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { cm } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import type { Keeping } from "./keeping";
import { asLast, takenFromLast, type AsLast, type Taken, type Today } from "./last_set";
import { setNow, type Open, type Saying } from "./open";
import { isHeldBeside } from "./sites";

/** A word that begins a label, in the middle of a sentence. */
const within = (word: string): string => word.charAt(0).toLocaleLowerCase() + word.slice(1);

/** What is offered, in the words of the questions below it; method and instrument are names and stay as they are. */
export function lastWords(take: Taken): string {
  const { method, site, side, posture, restraint, limb_circumference_mm: limb, cuff_width_mm: width, instrument } = take;
  return [
    method && say(`method-${method}`), site && within(say(`site-${kebab(site)}`)), side && within(say(`side-${side}`)),
    limb !== undefined && say("summary-limb", { cm: cm(limb) }), width !== undefined && say("used-cuff", { mm: String(width) }),
    posture && within(say(`posture-${kebab(posture)}`)), restraint && isHeldBeside(take) && within(say(`restraint-${restraint}`)), instrument,
  ].filter(Boolean).join(", ");
}

/** A difference as a sentence. */
export function differsLine({ word, facts }: Saying): string {
  const { site, side, why, gauge } = facts;
  const place = [site && say(`site-${kebab(String(site))}`), side && say(`side-${side}`)].filter(Boolean).join(", ");
  return say(word, {
    ...facts,
    ...(site ? { place } : {}), ...(why ? { why: say(`site-why-${why}`) } : {}), ...(gauge ? { gauge: say(`gauge-${gauge}`) } : {}),
  });
}

function isTaken(open: Open, { take }: AsLast): boolean {
  const now: Taken = setNow(open);
  return Object.entries(take).every(([key, value]) => now[key as keyof Taken] === value);
}

/** The offer, gone once everything stands as last time; what differs stays said. */
export function AsLastTime({ open, keeping, today, onTaken }: { open: Open; keeping: Keeping; today: Today; onTaken: (next: Open) => void }): JSX.Element | null {
  const last = asLast(open, today);
  if (!last) return null;
  const isOffered = !isTaken(open, last);
  if (!isOffered && last.differs.length === 0) return null;
  const take = (): void => {
    void keeping.act((head) => takenFromLast(head, last.take));
    onTaken(keeping.head());
  };
  return (
    <div class="stack">
      {isOffered && (
        <button type="button" class="button wide" onClick={take}>
          {say("as-last-time", { what: lastWords(last.take) })}
        </button>
      )}
      {last.differs.length > 0 && (
        <div class="note">
          <p><strong>{say("differs-today")}</strong></p>
          <ul>{last.differs.map((one) => <li key={one.word}>{differsLine(one)}</li>)}</ul>
        </div>
      )}
    </div>
  );
}
