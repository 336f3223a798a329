/* Dogs and cats at rest: sitting, on the chest, on the side, as shapes of 120 by 90 that several drawings share.
   Answers what they look like; must not frame or label anything. */
import type { JSX } from "preact";
import type { Species } from "./drawing";

export const RESTING_SIZE = [120, 90] as const;
export type Rest = "sitting" | "sternal" | "lateral";

interface Shapes {
  far: readonly string[];
  near: readonly string[];
  lines: readonly string[];
  solid: string;
}

const DOG: Readonly<Record<Rest, Shapes>> = {
  sitting: {
    far: ["M46 56C45 68 44 76 42 80C38 81 36 84 37 86H47"],
    near: [
      "M86 78C96 84 104 80 109 71C111 68 115 70 113 74C109 86 98 90 86 86",
      "M22 23C22 18 26 17 30 17C34 16 36 14 38 11C42 5 51 5 56 11C60 17 61 24 65 30C73 39 83 49 88 62C92 72 92 80 89 86H63C61 83 63 81 67 80" +
        "C62 77 58 70 54 67C49 62 47 58 45 54C42 46 40 40 38 34C34 34 26 34 24 31C22 29 21 26 22 23Z",
      "M60 48C62 58 58 70 58 80L59 86H46C45 83 47 81 51 80C51 70 49 62 45 54",
    ],
    lines: ["M67 80C64 68 70 59 81 60", "M49 12C44 18 45 27 50 31C55 28 58 21 55 14"],
    solid: "M22 23C22 18 25 17 28 17C28 20 26 22 22 23Z",
  },
  sternal: {
    far: ["M36 70C28 72 20 73 13 74C8 75 7 79 10 82"],
    near: [
      "M103 74C108 77 111 74 113 67C114 63 118 64 117 68C116 77 110 86 101 84",
      "M12 33C12 28 16 27 20 27C24 26 26 24 28 21C32 15 41 15 46 21C50 27 52 34 58 38C68 42 84 41 96 47C106 53 111 66 108 78" +
        "C108 82 107 85 105 86H75C72 84 74 80 79 79C72 80 64 81 57 80L52 86H17C12 85 12 79 18 78C26 77 33 76 39 72C36 64 34 54 32 45C28 45 18 45 14 42C12 40 11 36 12 33Z",
    ],
    lines: ["M79 79C93 80 99 77 98 70M79 79C76 68 83 58 95 59", "M57 80C59 74 58 68 54 64", "M39 22C34 28 35 37 40 41C45 38 48 31 45 24"],
    solid: "M12 33C12 28 15 27 18 27C18 30 16 32 12 33Z",
  },
  lateral: {
    far: ["M42 64C38 74 34 80 28 85C23 88 18 87 19 83", "M86 72C88 79 90 84 84 88H74"],
    near: [
      "M102 48C110 46 114 40 113 33C113 30 117 30 117 34C118 44 112 54 102 56",
      "M5 58C4 54 8 51 13 50C17 49 19 46 23 43C29 39 37 41 42 43C54 35 78 34 93 40C104 45 108 54 104 63C101 69 98 72 95 77C90 81 83 83 77 85" +
        "C71 87 68 83 72 80C77 78 81 76 83 73C79 72 75 69 73 65C66 68 56 68 50 65C45 71 37 76 29 80C23 83 16 82 18 77C21 74 27 72 31 68C34 65 35 62 35 59" +
        "C30 60 26 62 21 63C15 64 7 63 5 58Z",
    ],
    lines: ["M73 65C75 58 80 54 86 54", "M50 65C52 60 51 56 48 53", "M29 43C24 49 26 57 33 60C38 56 39 50 36 44", "M17 54L21 53"],
    solid: "M5 58C4 54 7 52 9 51C10 54 9 57 5 58Z",
  },
};

const CAT: Readonly<Record<Rest, Shapes>> = {
  sitting: {
    far: ["M50 56C49 68 48 76 46 80C42 81 40 84 41 86H50"],
    near: [
      "M84 78C94 82 101 76 100 67C99 58 108 54 112 60C114 64 109 67 107 68C108 80 100 90 84 86",
      "M28 25C27 21 28 17 31 14L33 3L41 8C43 7.500 46 7.500 48 8L56 3L57 14C60 20 59 26 58 30C69 35 81 48 86 62C90 72 90 80 86 86H67C65 83 67 81 70 80" +
        "C65 76 60 70 56 66C51 60 49 54 48 48C46 44 45 41 44 38C37 38 31 34 29 30C28 28 27.500 26 28 25Z",
      "M62 50C64 60 61 70 60 80L61 86H49C47 83 49 81 53 80C53 70 51 58 48 48",
    ],
    lines: ["M70 80C67 68 73 60 83 61", "M33 28L22 26M33 30L23 32"],
    solid: "M28 24H32L29.500 27Z",
  },
  sternal: {
    far: [],
    near: [
      "M103 74C110 76 113 70 111 62C110 55 117 53 118 60C119 73 114 86 101 84",
      "M13 43C12 39 13 35 16 32L18 21L26 26C28 25.500 31 25.500 33 26L41 21L42 32C44 37 46 40 50 42C62 38 84 38 97 47C108 56 112 72 107 84L104 86H76" +
        "C72 84 73 80 77 79C68 81 60 81 53 80L50 86H29C23 86 23 79 29 78C33 78 37 77 40 75C34 70 31 63 30 56C22 56 16 52 14 48C13 46 12.500 44 13 43Z",
    ],
    lines: ["M77 79C74 68 80 59 92 60", "M53 80C55 74 54 69 51 65", "M18 46L7 44M18 48L8 50"],
    solid: "M13 42H17L14.500 45Z",
  },
  lateral: {
    far: ["M44 66C40 75 36 81 30 86C25 89 20 87 21 84", "M88 72C90 79 91 84 86 88H77"],
    near: [
      "M102 50C110 50 111 42 108 34C106 26 113 23 115 30C120 44 114 60 100 59",
      "M7 58C5 54 6 50 9 47L8 36L17 40C19 39 22 39 25 40L33 33L35 44C38 46 42 47 46 46C58 38 80 37 94 43C104 48 108 56 104 64C101 69 99 73 96 77" +
        "C91 81 85 83 79 85C73 87 70 83 74 80C79 78 83 76 84 73C80 72 77 69 75 66C67 70 58 70 52 67C47 73 39 78 31 81C25 84 19 82 21 78C24 75 30 73 34 69" +
        "C37 66 38 65 38 63C32 67 24 69 18 67C12 66 8 62 7 58Z",
    ],
    lines: ["M75 66C77 60 81 56 87 56", "M52 67C54 62 53 58 50 55", "M14 54C16 55 18 55 20 53", "M12 60L2 63M13 62L5 67"],
    solid: "M7 57L11 57L8.500 60Z",
  },
};

const SHAPES: Readonly<Record<Species, Readonly<Record<Rest, Shapes>>>> = { dog: DOG, cat: CAT };
const EYES: Readonly<Record<Species, Readonly<Record<Rest, readonly [number, number] | undefined>>>> = {
  dog: { sitting: [37, 17], sternal: [27, 27], lateral: undefined },
  cat: { sitting: [36, 20], sternal: [21, 38], lateral: undefined },
};

/** The animal at rest, facing left; on its side its eye is closed. */
export function Resting({ species, rest }: { species: Species; rest: Rest }): JSX.Element {
  const { far, near, lines, solid } = SHAPES[species][rest];
  const eye = EYES[species][rest];
  return (
    <g>
      {far.map((path) => (
        <path class="far" key={path} d={path} />
      ))}
      {near.map((path) => (
        <path class="skin" key={path} d={path} />
      ))}
      {lines.map((path) => (
        <path key={path} d={path} />
      ))}
      <path class="solid" d={solid} />
      {eye && <circle class="solid" cx={eye[0]} cy={eye[1]} r="1" />}
    </g>
  );
}
