/* A piece of a screen that stays as it is drawn until what it shows has changed. On a slow phone drawing a pad of keys and a row of
   readings anew for one digit takes longer than the digit. Must not hold a state. */
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";

interface Props {
  /** All that `draw` reads and that can change. */
  on: readonly unknown[];
  draw: () => JSX.Element | null;
}

export function Still({ on, draw }: Props): JSX.Element | null {
  return useMemo(draw, on);
}
