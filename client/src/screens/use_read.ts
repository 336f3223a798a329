/* Reads from the phone's record for a screen, again after every commit of this window or another. Keeps the last answer meanwhile. */
import { useEffect, useState } from "preact/hooks";
import { thePhone } from "./place";

/** What `read` answered last; undefined until it has. Read again when the record changed or one of `on` did. */
export function useRead<T>(read: () => Promise<T>, on: readonly unknown[] = []): T | undefined {
  const [answer, setAnswer] = useState<T | undefined>(undefined);
  const changed = thePhone().changed.value;
  useEffect(() => {
    let current = true;
    read().then(
      (next) => {
        if (current) setAnswer(() => next);
      },
      () => undefined, // what the store's trouble is, the status says; the last answer stays
    );
    return () => {
      current = false;
    };
  }, [changed, ...on]);
  return answer;
}
