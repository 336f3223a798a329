/* Whether readings agree, as a shape beside the words: level dots, dots coming down, dots apart, or places still open.
   Drawn in ink; says nothing to those who hear the words. */
import type { JSX } from "preact";

export type VerdictKind = "steady" | "falling" | "scattered" | "too_few";

/** Heights of the five dots, in px of a drawing 40 wide and 20 high. */
const HEIGHTS: Record<VerdictKind, readonly number[]> = {
  steady: [10, 10, 10, 10, 10], falling: [3, 6.5, 10, 13.5, 17], scattered: [14, 3, 17, 6, 12], too_few: [10, 10, 10, 10, 10],
};

export function VerdictShape({ verdict }: { verdict: VerdictKind }): JSX.Element {
  const isOpen = verdict === "too_few";
  return (
    <svg class="verdict-shape" viewBox="0 0 40 20" aria-hidden="true">
      {HEIGHTS[verdict].map((y, n) => (
        <circle key={n} class={isOpen && n > 0 ? "not" : "counts"} cx={4 + n * 8} cy={y} r="2.75" />
      ))}
    </svg>
  );
}
