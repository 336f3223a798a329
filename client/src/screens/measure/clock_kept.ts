/* Keeps in the draft by how much the clock was set while its quiet time ran, on whichever part of the visit that is seen: a page that is
   killed afterwards must not take it along. Must not correct a time by itself. */
import { useEffect } from "preact/hooks";
import { clockShown } from "../../parts/now";
import type { Keeping } from "./keeping";
import { withSteps } from "./quiet";

/** For as long as the visit is shown; writes at a step of the clock alone. */
export function useClockKept(keeping: Keeping): void {
  const seen = clockShown();
  useEffect(() => {
    if (withSteps(keeping.head(), seen) !== keeping.head()) void keeping.act((head) => withSteps(head, seen));
  }, [keeping, seen.steps]);
}
