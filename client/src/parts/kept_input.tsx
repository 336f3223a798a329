/* A real text field that paints only what is kept. What a keyboard, a paste or dictation would write is stopped, handed on,
   and comes back as `text` once it is on disk. Where the browser cannot be stopped (composing, filling in by a program)
   the new text is handed on afterwards. Works the same with the screen's own keys beside it. */
import type { JSX, TargetedEvent } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

interface Props {
  id: string;
  /** What is kept, and therefore shown. */
  text: string;
  /** The newest text, kept or not, on which the next press builds. */
  newest: () => string;
  mode: "none" | "decimal" | "numeric" | "text";
  describedBy?: string;
  wrong?: boolean;
  onText: (text: string) => void;
  onEnter?: () => void;
  onFocus?: () => void;
}

/** A number or a bag of widths is no prose: nothing may be completed, corrected or capitalised. */
const PLAIN = { autocomplete: "off", autocorrect: "off", autocapitalize: "off", spellcheck: false, enterkeyhint: "next" } as const;

/** The text and caret after one edit; undefined when it is not an edit this field can do by itself. */
export function edited(text: string, caret: Caret, kind: string, inserted: string | null): { text: string; at: number } | undefined {
  const [start, end] = [Math.min(caret.start, text.length), Math.min(caret.end, text.length)];
  if (kind.startsWith("insert") && inserted !== null) {
    const clean = inserted.replace(/[\r\n]+/g, " ");
    return { text: text.slice(0, start) + clean + text.slice(end), at: start + clean.length };
  }
  if (kind === "deleteContentBackward" || kind === "deleteByCut") {
    const from = start === end && kind !== "deleteByCut" ? Math.max(0, start - 1) : start;
    return { text: text.slice(0, from) + text.slice(end), at: from };
  }
  if (kind === "deleteContentForward") {
    return { text: text.slice(0, start) + text.slice(start === end ? end + 1 : end), at: start };
  }
  return undefined;
}

type Caret = { start: number; end: number };

/** Where the edit falls: at the field's own selection while it shows the newest text, else behind what is still being kept. */
function placeOf(input: HTMLInputElement, newest: string, caret: number | undefined): Caret {
  if (newest === input.value) return { start: input.selectionStart ?? 0, end: input.selectionEnd ?? 0 };
  const at = caret ?? newest.length;
  return { start: at, end: at };
}

export function KeptInput(props: Props): JSX.Element {
  const field = useRef<HTMLInputElement>(null);
  const caret = useRef<number | undefined>(undefined);
  const { text, newest } = props;

  useLayoutEffect(() => {
    if (caret.current !== undefined && field.current === document.activeElement) {
      field.current?.setSelectionRange(caret.current, caret.current);
    }
    if (newest() === text) caret.current = undefined;
  }, [text]);

  function before(event: InputEvent): void {
    if (!field.current || !event.cancelable || event.isComposing) return;
    const inserted = event.data ?? event.dataTransfer?.getData("text/plain") ?? null;
    const next = edited(newest(), placeOf(field.current, newest(), caret.current), event.inputType, inserted);
    if (!next) return;
    event.preventDefault();
    caret.current = next.at;
    props.onText(next.text);
  }

  function after(event: TargetedEvent<HTMLInputElement>): void {
    caret.current = event.currentTarget.selectionStart ?? undefined;
    if (event.currentTarget.value !== newest()) props.onText(event.currentTarget.value);
  }

  return (
    <input
      ref={field}
      id={props.id}
      type="text"
      inputMode={props.mode}
      {...PLAIN}
      value={text}
      aria-describedby={props.describedBy}
      aria-invalid={props.wrong ? "true" : undefined}
      onBeforeInput={before}
      onInput={after}
      onKeyDown={(event) => {
        if (event.key !== "Enter" || !props.onEnter) return;
        event.preventDefault();
        props.onEnter();
      }}
      onFocus={props.onFocus}
    />
  );
}
