/* The cuff at the height of the heart base, above it and below it: a plain line, a small cross where the heart base lies.
   Must not show how far is too far. */
import type { JSX } from "preact";
import { Band, Drawing, type Heard, type Species } from "./drawing";

export const LEVELS = ["level", "above", "below"] as const;
export type Level = (typeof LEVELS)[number];

const TRUNKS: Readonly<Record<Species, { trunk: string; lines: readonly string[]; solid: string; eye: readonly [number, number] }>> = {
  dog: {
    trunk:
      "M126 68C98 60 78 48 68 32C64 24 63 15 60 9C55 2 46 1 41 6C39 9 37 11 33 12C29 12 25 13 25 18C24 21 25 24 27 26C29 29 36 29 41 29" +
      "C42 42 42 54 44 64C46 74 54 84 64 90C80 96 100 97 126 94V68Z",
    lines: ["M53 7C48 13 49 22 54 26C59 23 62 16 59 9"],
    solid: "M25 18C25 13 28 12 31 12C31 15 29 17 25 18Z",
    eye: [40, 12],
  },
  cat: {
    trunk:
      "M126 70C98 64 76 50 64 28C66 23 66 18 64 13L62 2L54 7C52 6.500 49 6.500 47 7L39 2L37 13C34 16 33 20 34 24C34 26 34 28 35 29C37 34 43 37 50 37" +
      "C49 46 47 56 48 64C50 76 56 86 66 92C82 97 100 98 126 95V70Z",
    lines: ["M39 27L28 25M39 29L29 31"],
    solid: "M34 23H38L35.500 26Z",
    eye: [42, 19],
  },
};

const LEG = "M72 54C62 55 34 56 18 56C9 56 8 67 17 68C34 69 58 71 68 74";
const HEART_BASE = [70, 62] as const;
const TURN: Readonly<Record<Level, number>> = { level: 0, above: 27, below: -42 };

/** A front half, facing left, one forelimb held out. */
export function LevelDrawing({ species, level, label }: Heard & { species: Species; level: Level }): JSX.Element {
  const { trunk, lines, solid, eye } = TRUNKS[species];
  const [x, y] = HEART_BASE;
  return (
    <Drawing size={[120, 104]} label={label}>
      <path class="skin" d={trunk} />
      {lines.map((line) => (
        <path key={line} d={line} />
      ))}
      <path class="solid" d={solid} />
      <circle class="solid" cx={eye[0]} cy={eye[1]} r="1" />
      <g transform={`rotate(${TURN[level]} ${x} ${y})`}>
        <path class="skin" d={LEG} />
        <Band at={[38, 62]} width={14} across={17} turn={90} kind="now" />
      </g>
      <path class="dashed" d={`M2 ${y}H118`} />
      <path class="off" d={`M${x} ${y - 7}v14m-7 -7h14`} />
    </Drawing>
  );
}
