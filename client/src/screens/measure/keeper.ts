/* Nothing typed is painted before the phone has it on disk. The keeper stands between an act and the paint:
   acts queue in order on `head`, one strict transaction at a time writes the newest head, and only then does `shown` follow.
   When a write fails the head stays, is shown as not saved, and is tried again; nothing is ever taken out of it. */
import { signal, type ReadonlySignal } from "@preact/signals";

export interface Keeper<T> {
  /** What is on disk, and therefore on the screen. */
  shown: ReadonlySignal<T>;
  /** What was typed and could not be written yet, with the code of the trouble; undefined while all is well. */
  unkept: ReadonlySignal<{ head: T; code: string } | undefined>;
  /** The newest state, written or not: what the next act builds on. */
  head(): T;
  /** Does an act on the head. Resolves when the write that holds it is over, well or not; never throws for a failed write. */
  act(change: (head: T) => T): Promise<void>;
  /** Writes again what could not be written. */
  retry(): Promise<void>;
}

/**
 * A keeper of one document. `write` resolves when the document is flushed to disk; acts made meanwhile go into one next write.
 * `codeOf` turns a failed write into the code of a sentence.
 */
export function keeperOf<T>(first: T, write: (document: T) => Promise<void>, codeOf: (failure: unknown) => string): Keeper<T> {
  const shown = signal(first);
  const unkept = signal<{ head: T; code: string } | undefined>(undefined);
  let head = first;
  let writing: Promise<void> | undefined;

  async function writeAll(): Promise<void> {
    while (head !== shown.peek()) {
      const next = head;
      try {
        await write(next);
      } catch (failure) {
        unkept.value = { head, code: codeOf(failure) };
        return;
      }
      shown.value = next;
      unkept.value = undefined;
    }
  }

  function retry(): Promise<void> {
    writing ??= writeAll().finally(() => {
      writing = undefined;
    });
    return writing;
  }

  return {
    shown,
    unkept,
    head: () => head,
    act(change) {
      head = change(head);
      return retry();
    },
    retry,
  };
}
