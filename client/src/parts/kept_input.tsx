/* A real text field that paints only what is kept. What a keyboard, a paste or dictation would write is stopped, handed on,
   and comes back as `text` once it is on disk. Where the browser cannot be stopped (composing, filling in by a program)
   the new text is handed on afterwards. Works the same with the screen's own keys beside it. */
import type { JSX } from "preact";
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

type Caret = { start: number; end: number };

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
    const input = field.current;
    if (!input || !event.cancelable || event.isComposing) return;
    const now = newest();
    const whole = { start: caret.current ?? now.length, end: caret.current ?? now.length };
    const place = now === input.value ? { start: input.selectionStart ?? 0, end: input.selectionEnd ?? 0 } : whole;
    const inserted = event.data ?? event.dataTransfer?.getData("text/plain") ?? null;
    const next = edited(now, place, event.inputType, inserted);
    if (!next) return;
    event.preventDefault();
    caret.current = next.at;
    props.onText(next.text);
  }

  return (
    <input
      ref={field}
      id={props.id}
      type="text"
      inputMode={props.mode}
      autocomplete="off"
      autocorrect="off"
      autocapitalize="off"
      spellcheck={false}
      enterkeyhint="next"
      value={text}
      aria-describedby={props.describedBy}
      aria-invalid={props.wrong ? "true" : undefined}
      onBeforeInput={before}
      onInput={(event) => {
        caret.current = event.currentTarget.selectionStart ?? undefined;
        if (event.currentTarget.value !== newest()) props.onText(event.currentTarget.value);
      }}
      onKeyDown={(event) => {
        if (event.key !== "Enter" || !props.onEnter) return;
        event.preventDefault();
        props.onEnter();
      }}
      onFocus={props.onFocus}
    />
  );
}
