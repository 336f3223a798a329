/* The whole animal with the places of the cuff: crossed out, filled for now, an outline for last time.
   Answers where on the body; must not decide which site may be used. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Band, Drawing, type Heard, type Species } from "./drawing";
import { Standing, STANDING_SIZE } from "./outlines";

export const SITES = ["forearm", "above_elbow", "above_hock", "metatarsus", "tail_base"] as const;
export type Site = (typeof SITES)[number];
export type Side = "left" | "right";

/** A place a cuff can be; the tail has no side. */
export interface Place {
  site: Site;
  side?: Side;
  /** Per mille of the drawing's width and height. */
  x: number;
  y: number;
}

export interface Mark {
  site: Site;
  /** Left out for a limb: the near one, left. */
  side?: Side;
  state: "off" | "now" | "last";
}

interface Spot {
  at: readonly [number, number];
  /** Where its button lies, moved a little off the mark: two targets of 44 px with 8 between them must fit on a drawing 296 px wide. */
  tap?: readonly [number, number];
  across: number;
  turn: number;
}

type Spots = Readonly<Record<string, Spot>>;

const DOG: Spots = {
  above_elbow_left: { at: [101, 96], tap: [103, 95], across: 34, turn: -28 },
  above_elbow_right: { at: [62, 110], tap: [60, 107.5], across: 24, turn: 18 },
  forearm_left: { at: [103, 137], tap: [103, 138], across: 21, turn: 0 },
  forearm_right: { at: [51, 148], tap: [51, 150.5], across: 20, turn: 14 },
  above_hock_left: { at: [197, 122], tap: [198.5, 120.5], across: 30, turn: -42 },
  above_hock_right: { at: [157, 124], tap: [155.5, 122], across: 26, turn: -10 },
  metatarsus_left: { at: [208, 162], tap: [208, 163.5], across: 19, turn: 8 },
  metatarsus_right: { at: [157, 163], tap: [157, 165], across: 19, turn: 10 },
  tail_base: { at: [202, 57], across: 19, turn: 48 },
};

const CAT: Spots = {
  above_elbow_left: { at: [102, 101], tap: [104.5, 100], across: 32, turn: -28 },
  above_elbow_right: { at: [64, 113], tap: [61.5, 110.5], across: 24, turn: 20 },
  forearm_left: { at: [104, 142], tap: [104, 143], across: 20, turn: 0 },
  forearm_right: { at: [51, 151], tap: [51, 153.5], across: 18, turn: 14 },
  above_hock_left: { at: [199, 128], tap: [200.5, 125.5], across: 32, turn: -42 },
  above_hock_right: { at: [159, 127], tap: [157.5, 125], across: 26, turn: -8 },
  metatarsus_left: { at: [209, 166], tap: [209, 168.5], across: 18, turn: 8 },
  metatarsus_right: { at: [158, 166], tap: [158, 168], across: 17, turn: 10 },
  tail_base: { at: [210, 78], across: 22, turn: 50 },
};

/** The standing animal and a line of letters below its feet. */
const BODY_SIZE = [STANDING_SIZE[0], STANDING_SIZE[1] + 14] as const;

const SPOTS: Readonly<Record<Species, Spots>> = { dog: DOG, cat: CAT };

const spotOf = (species: Species, site: Site, side: Side = "left"): Spot | undefined =>
  SPOTS[species][site === "tail_base" ? site : `${site}_${side}`];

function placesOf(spots: Spots): readonly Place[] {
  return Object.entries(spots).map(([name, { at, tap = at }]) => {
    const side = /_(left|right)$/.exec(name)?.[1] as Side | undefined;
    const site = (side ? name.slice(0, -side.length - 1) : name) as Site;
    const [width, height] = BODY_SIZE;
    return { site, ...(side && { side }), x: Math.round((tap[0] * 1000) / width), y: Math.round((tap[1] * 1000) / height) };
  });
}

/** Where each site lies in the drawing, so that real buttons can be laid over it. */
export const SITE_PLACES: Readonly<Record<Species, readonly Place[]>> = { dog: placesOf(DOG), cat: placesOf(CAT) };

const CROSS = 10;

/** Under each foot, from the left. */
const LETTERS = [[41, "side-right-letter"], [99, "side-left-letter"], [152, "side-right-letter"], [202, "side-left-letter"]] as const;

function MarkShape({ species, mark }: { species: Species; mark: Mark }): JSX.Element | null {
  const spot = spotOf(species, mark.site, mark.side);
  if (!spot) return null;
  const [x, y] = spot.at;
  if (mark.state !== "off") return <Band at={spot.at} across={spot.across} turn={spot.turn} width={13} kind={mark.state} />;
  return <path class="off" d={`M${x - CROSS} ${y - CROSS}l${2 * CROSS} ${2 * CROSS}m0 ${-2 * CROSS}l${-2 * CROSS} ${2 * CROSS}`} />;
}

interface Props extends Heard {
  species: Species;
  marks: readonly Mark[];
}

/** Seen from its left: near limbs are left ones, far limbs right ones, each with its letter. */
export function Body({ species, marks, label }: Props): JSX.Element {
  return (
    <Drawing size={BODY_SIZE} label={label}>
      <Standing species={species} />
      {LETTERS.map(([x, letter]) => (
        <text key={x} x={x} y="202" text-anchor="middle">
          {say(letter)}
        </text>
      ))}
      {marks.map((mark) => (
        <MarkShape key={`${mark.site}-${mark.side}-${mark.state}`} species={species} mark={mark} />
      ))}
    </Drawing>
  );
}
