/* What each measurement not filed yet is called on the round, so that two of them can be told apart: whose, how many readings, which
   animal, where the cuff is, when it was begun. Pure. Must not say more than is needed: seconds only where two would read alike. */
import { say } from "../../contract/words";
import type { Draft } from "../../offline/journal";
import { dayAndTime, dayAndTimeToTheSecond, timeOfDay, timeToTheSecond } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import { inOneLine } from "../animal/animals";
import { openOf, type Open } from "../measure/open";

export interface DraftLine {
  readonly id: string;
  /** Whose it is, and how many readings it holds. */
  readonly line: string;
  readonly about: string;
}

const isSameDay = (one_ms: number, other_ms: number): boolean => new Date(one_ms).toDateString() === new Date(other_ms).toDateString();

/** When it was begun: its time where that was today, else its day too. */
function begunTold(at_ms: number, now_ms: number, isExact: boolean): string {
  if (isExact) return isSameDay(at_ms, now_ms) ? timeToTheSecond(at_ms) : dayAndTimeToTheSecond(at_ms);
  return isSameDay(at_ms, now_ms) ? timeOfDay(at_ms) : dayAndTime(at_ms);
}

function placed({ measurement: { sets } }: Open): string {
  const { site, side, cuff_width_mm: width } = sets[sets.length - 1] ?? {};
  return inOneLine(
    site && say(`site-${kebab(site)}`), side && say(`side-${side}`), width !== undefined && say("used-cuff", { mm: String(width) }),
  );
}

function lineOf(draft: Draft, now_ms: number, isExact: boolean): DraftLine {
  const open = openOf(draft);
  const { species, sets, started_at_ms = draft.updatedMs } = open.measurement;
  const n = sets.reduce((sum, set) => sum + set.readings.length, 0);
  const begun = say("draft-begun", { when: begunTold(started_at_ms, now_ms, isExact) });
  return {
    id: draft.id,
    line: say("draft-line", { name: open.name ?? say("draft-name-none"), n }),
    about: inOneLine(say(`species-${species}`), open.mark, placed(open), begun),
  };
}

/** One for each, in the order given. */
export function draftLines(drafts: readonly Draft[], now_ms: number): DraftLine[] {
  const lines = drafts.map((draft) => lineOf(draft, now_ms, false));
  const isAlike = (one: DraftLine, other: DraftLine): boolean => one.id !== other.id && one.line === other.line && one.about === other.about;
  return drafts.map((draft, at) => {
    const line = lines[at] as DraftLine;
    return lines.some((other) => isAlike(line, other)) ? lineOf(draft, now_ms, true) : line;
  });
}
