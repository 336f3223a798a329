/* The parts of a visit in one row of words, and under them in one line what was noted so far: nothing is said of what nobody was asked.
   Must not keep anybody in a part. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { HandSwitch } from "../../parts/hand_switch";
import { partOf } from "./fields";
import type { Keeping } from "./keeping";
import { toPart, type Open, type Part } from "./open";
import { problemsToShow } from "./part_problems";
import { summaryOf } from "./summary";

const PARTS: readonly Part[] = ["ready", "calm", "cuff", "readings", "result"];

/** What the folds are drawn from: while readings are taken their words alone, so that a digit draws them not anew. */
export function shownOf(open: Open): readonly unknown[] {
  return open.part === "readings" ? [open.part, open.finished] : [open];
}

/** Leaves a part for the next one, unless something in it cannot be read: then that is said first. */
export function leave(open: Open, to: Part): Open {
  const left = { ...open, texts: { ...open.texts, [`left_${open.part}`]: "yes" } };
  const stays = problemsToShow(left).some(({ field }) => partOf(field) === open.part);
  return stays ? left : toPart(open, to);
}

/** The words of other parts in which something was noted. Where the number is what counts, in Readings and Result, none of them. */
function notedIn(open: Open, parts: readonly Part[]): { part: Part; words: string }[] {
  if (open.part === "readings" || open.part === "result") return [];
  return parts.flatMap((part) => {
    const words = part === open.part ? undefined : summaryOf(open, part);
    return words ? [{ part, words }] : [];
  });
}

/** One row; in Readings with the switch for the other hand, which must not be looked for with a cuff on. */
export function Folds({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const parts = PARTS.filter((part) => part !== "result" || open.finished);
  const noted = notedIn(open, parts);
  const turn = (part: Part): void => {
    void keeping.act((head) => (head.texts[`left_${head.part}`] === "yes" ? toPart(head, part) : leave(head, part)));
  };
  return (
    <>
      <nav class="folds" aria-label={say("measure-title")}>
        {parts.map((part) => (
          <button
            key={part} type="button" class="fold"
            aria-expanded={open.part === part}
            aria-label={say("part-show", { part: say(`part-${part}`) })}
            aria-describedby={noted.some((one) => one.part === part) ? `fold-${part}` : undefined}
            onClick={() => turn(part)}
          >
            {say(`part-${part}`)}
          </button>
        ))}
        {open.part === "readings" && !open.finished && <HandSwitch />}
      </nav>
      {noted.length > 0 && (
        <p class="small noted-line">
          {noted.map(({ part, words }, at) => <span key={part}>{at > 0 && " · "}<span id={`fold-${part}`}>{words}</span></span>)}
        </p>
      )}
    </>
  );
}
