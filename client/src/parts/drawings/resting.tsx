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
    far: ["M45 50C44 64 43 73 40 80C36 81 34 84 35 86H46"],
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
    far: ["M36 70C28 72 20 73 12 74C7 75 6 81 10 84H16"],
    near: [
      "M103 74C108 77 111 74 113 67C114 63 118 64 117 68C116 77 110 86 101 84",
      "M12 33C12 28 16 27 20 27C24 26 26 24 28 21C32 15 41 15 46 21C50 27 52 34 58 38C68 42 84 41 96 47C106 53 111 66 108 78" +
        "C108 82 107 85 105 86H75C72 84 74 80 79 79C72 80 64 81 57 80L52 86H17C12 85 12 79 18 78C26 77 33 76 39 72C36 64 34 54 32 45C28 45 18 45 14 42C12 40 11 36 12 33Z",
    ],
    lines: ["M79 79C93 80 99 77 98 70M79 79C76 68 83 58 95 59", "M57 80C59 74 58 68 54 64", "M39 22C34 28 35 37 40 41C45 38 48 31 45 24"],
    solid: "M12 33C12 28 15 27 18 27C18 30 16 32 12 33Z",
  },
  lateral: {
    far: ["M40 60C37 70 33 78 28 85C25 90 32 91 36 87C41 80 46 72 49 66", "M84 68C85 76 82 82 77 86C73 91 80 92 85 89C91 84 95 76 96 70"],
    near: [
      "M103 48C110 47 113 41 113 34C113 30 117 30 117 34C117 44 112 54 103 56",
      "M4 57C3 53 7 50 12 49C16 48 18 45 22 42C28 38 36 40 41 42C53 35 78 34 93 40C104 45 108 54 104 62C102 70 97 77 90 82C84 86 78 87 72 88" +
        "C66 89 63 84 68 82C74 80 79 77 82 72C78 70 75 67 73 64C66 67 56 67 49 64C43 71 33 78 22 83C15 86 9 82 13 79C21 75 29 69 34 61" +
        "C35 60 35 59 35 58C30 60 25 61 20 62C14 63 6 62 4 57Z",
    ],
    lines: ["M73 64C75 57 80 53 87 54", "M49 64C52 59 51 54 47 51", "M28 42C23 48 25 56 32 59C37 55 38 49 35 43", "M15 54C17 55 18 55 20 53"],
    solid: "M4 57C3 53 6 51 8 50C9 53 8 56 4 57Z",
  },
};

const CAT: Readonly<Record<Rest, Shapes>> = {
  sitting: {
    far: ["M48 44C46 60 45 72 43 80C39 81 37 84 38 86H48"],
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
    far: ["M42 62C39 71 35 79 30 85C27 90 34 91 38 87C43 80 47 73 51 68", "M85 70C86 77 83 83 78 87C75 91 82 92 87 89C92 84 96 77 97 71"],
    near: [
      "M102 50C110 50 111 42 108 34C106 26 113 23 115 30C120 44 114 60 100 59",
      "M7 58C5 54 6 50 9 47L8 36L17 40C19 39 22 39 25 40L33 33L35 44C38 46 42 47 46 46C58 38 80 37 94 43C104 48 108 56 104 64C102 71 98 78 91 83" +
        "C85 87 79 88 73 89C67 90 64 85 69 83C75 81 80 78 83 73C79 71 77 69 75 66C67 70 58 70 52 67C46 73 36 80 25 84C18 87 12 83 16 80C24 76 32 71 36 64" +
        "L36 64C30 68 23 69 17 67C12 65 8 62 7 58Z",
    ],
    lines: ["M75 66C77 60 81 56 88 56", "M52 67C54 62 53 57 49 54", "M14 54C16 55.500 18 55.500 20 53.500", "M12 60L2 63M13 62L5 67"],
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
