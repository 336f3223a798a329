/* A question of the Cuff part: in full while it is being answered, one line before and after, so that the whole part stands on about
   one screen. A tap folds it after a moment and opens the next; keys of a keyboard move among answers and fold nothing.
   Must not decide what an answer means. */
import type { ComponentChildren, JSX, Ref } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { kebab } from "../../parts/word_ids";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, type Open } from "./open";

export type QuestionId = "method" | "site" | "side" | "limb" | "bag" | "width" | "posture" | "height" | "gauge" | "restraint" | "instrument";

/** Which questions are shown in full. */
export interface Folds {
  isOpen(question: QuestionId): boolean;
  open(question: QuestionId): void;
  /** An answer was tapped: the question folds after a moment, once it is complete, and the next one opens in its place. */
  answered(question: QuestionId): void;
  /** Leaves only these open, as after taking over the last visit. */
  only(questions: readonly QuestionId[]): void;
}

/** A second tap within this time falls on the same answer and not on what comes in its place. */
export const SETTLE_MS = 350;

/** Limb and cuff are answered together: the one is chosen by the other. */
function together(question: QuestionId): readonly QuestionId[] {
  return question === "limb" || question === "width" ? ["limb", "width"] : [question];
}

/** What is open after an answer. `left` are the questions still without one, in the order of the work; the method has one from the start. */
export function movedOn(shown: ReadonlySet<QuestionId>, answered: QuestionId, left: readonly QuestionId[]): ReadonlySet<QuestionId> {
  if (together(answered).some((one) => left.includes(one) && shown.has(one))) return shown;
  const asked = left.filter((one) => one !== "method");
  const still = asked.filter((one) => shown.has(one));
  return new Set(still.length > 0 ? still : asked.slice(0, 1).flatMap(together));
}

/** What a part opens with: the first question without an answer, and before it the method while nobody confirmed it. */
export function openedWith(left: readonly QuestionId[]): QuestionId[] {
  const others = left.filter((one) => one !== "method").slice(0, 1).flatMap(together);
  return left.includes("method") ? ["method", ...others] : others;
}

/** Starts with these questions open; `left` is asked again at each answer. */
export function useFolds(first: () => readonly QuestionId[], left: () => readonly QuestionId[]): Folds {
  const [shown, setShown] = useState<ReadonlySet<QuestionId>>(() => new Set(first()));
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  return {
    isOpen: (question) => shown.has(question),
    open: (question) => setShown((now) => new Set(now).add(question)),
    answered: (question) => {
      clearTimeout(timer.current);
      timer.current = setTimeout(() => setShown((now) => movedOn(now, question, left())), SETTLE_MS);
    },
    only: (questions) => setShown(new Set(questions)),
  };
}

interface FoldProps {
  folds: Folds;
  question: QuestionId;
  label: string;
  /** What was answered, in words; absent = nothing yet. */
  answer: string | undefined;
  /** Said below the line whether it is folded or not. */
  note?: string | undefined;
  children: ComponentChildren;
}

/** A tap on an answer; arrow keys arrive as clicks that count none. The unit beside a number is no answer. */
function isTappedAnswer({ detail, target }: MouseEvent): boolean {
  return detail > 0 && target instanceof HTMLInputElement && target.type === "radio" && !target.closest(".limb");
}

/** One line with its answer, or the question itself. */
export function Fold({ folds, question, label, answer, note, children }: FoldProps): JSX.Element {
  const isOpen = folds.isOpen(question);
  const { box, acted } = useFocusAfter(isOpen);
  const answered = (event: MouseEvent): void => {
    if (!isTappedAnswer(event)) return;
    acted();
    folds.answered(question);
  };
  const opened = (): void => {
    acted();
    folds.open(question);
  };
  return (
    <div class={isOpen ? "asked open" : "asked"} ref={box} onClick={answered}>
      {isOpen ? children : (
        <button type="button" class="line" aria-expanded="false" onClick={opened}>
          <span class="line-label">{label}</span> <strong class="line-answer">{answer ?? say("line-not-noted")}</strong>
        </button>
      )}
      {note && <p class="small">{note}</p>}
    </div>
  );
}

/** A line goes when it is pressed, and what was asked when it is answered: the focus is handed to what stands there then. */
function useFocusAfter(isOpen: boolean): { box: Ref<HTMLDivElement>; acted: () => void } {
  const box = useRef<HTMLDivElement>(null);
  const isDue = useRef(false);
  useEffect(() => {
    const isLost = isDue.current && document.activeElement === document.body;
    isDue.current = false;
    if (!isLost) return;
    const next = box.current?.querySelector<HTMLElement>("input:checked") ?? box.current?.querySelector<HTMLElement>("input, button");
    next?.focus({ preventScroll: true });
  }, [isOpen]);
  return { box, acted: () => (isDue.current = true) };
}

type Field = "method" | "gauge" | "posture" | "restraint" | "side";

interface QuestionProps {
  keeping: Keeping;
  folds: Folds;
  field: Field;
  answers: readonly string[];
  /** More than the bare word beside an answer. */
  labelOf?: (value: string) => string;
  /** Help below the question while it is open. */
  children?: ComponentChildren;
}

/** One question of the set, answered by a word of the wire document. */
export function Question({ keeping, folds, field, answers, labelOf, children }: QuestionProps): JSX.Element {
  const word = (value: string): string => say(`${field}-${kebab(value)}`);
  const value = setNow(keeping.head())[field];
  return (
    <Fold folds={folds} question={field} label={say(field === "restraint" ? "line-restraint" : `field-${field}`)} answer={value && word(value)}>
      <Choices
        name={field}
        label={say(`field-${field}`)}
        answers={answers.map((one) => ({ value: one, label: labelOf ? labelOf(one) : word(one) }))}
        value={value}
        onChoose={(chosen) => keeping.act((head) => changed(head, `field-${field}`, inSetNow(head, field), chosen))}
      />
      {children}
    </Fold>
  );
}

/** Everything that was not answered yet, and is not one of those asked rarely: what the part opens with. */
export function unanswered(open: Open, rare: readonly QuestionId[]): QuestionId[] {
  const set = setNow(open);
  const noted: Partial<Record<QuestionId, unknown>> = {
    method: open.measurement.previous ?? open.texts["left_cuff"],
    site: set.site && (set.side ?? set.site === "tail_base"), limb: set.limb_circumference_mm, width: set.cuff_width_mm, posture: set.posture,
    height: set.cuff_above_heart_mm ?? (open.texts["height_side"] === "not_known" ? "not_known" : undefined),
    gauge: set.method === "oscillometric" || set.gauge, restraint: set.restraint, instrument: set.instrument,
  };
  const all: QuestionId[] = ["method", "site", "limb", "width", "posture", "height", "gauge", "restraint", "instrument"];
  return all.filter((question) => !noted[question] && noted[question] !== 0 && !rare.includes(question));
}
