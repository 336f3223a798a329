/* The sheet every drawing stands on: one line width on the screen at every size, colours from the look alone.
   Answers how a drawing is framed and heard; must not know what is drawn. */
import type { ComponentChildren, JSX } from "preact";

export type Species = "dog" | "cat";

/** What every drawing takes: with a label it is heard as a picture of that name, without one it is passed over. */
export interface Heard {
  label?: string;
}

interface Props extends Heard {
  /** Width and height of the drawing's own units. */
  size: readonly [number, number];
  /** A line round it: what is drawn goes on beyond the edge. */
  framed?: boolean;
  children: ComponentChildren;
}

/** An SVG of fixed units; its width is given by what it stands in. */
export function Drawing({ size, label, framed, children }: Props): JSX.Element {
  const heard = label === undefined ? ({ "aria-hidden": "true" } as const) : ({ role: "img", "aria-label": label } as const);
  return (
    <svg class={framed ? "drawing framed" : "drawing"} viewBox={`0 0 ${size[0]} ${size[1]}`} focusable="false" {...heard}>
      {children}
    </svg>
  );
}

interface BandProps {
  /** Centre, in units of the drawing. */
  at: readonly [number, number];
  /** Along the limb, and across it. */
  width: number;
  across: number;
  /** Degrees from upright; 0 is a limb that stands straight. */
  turn?: number;
  kind: "now" | "last";
}

/** A cuff seen from the side: filled when it is on now, an outline for where it was. */
export function Band({ at: [x, y], width, across, turn = 0, kind }: BandProps): JSX.Element {
  const place = { x: x - across / 2, y: y - width / 2, width: across, height: width, rx: 2 };
  return <rect class={kind === "now" ? "solid" : "skin"} {...place} transform={`rotate(${turn} ${x} ${y})`} />;
}
