/* A dog and a cat standing, seen from their left: the shapes that the body and the posture drawings share.
   Answers what the animals look like; must not hold a place for a cuff. */
import type { JSX } from "preact";
import type { Species } from "./drawing";

/** Units of a standing animal. */
export const STANDING_SIZE = [240, 192] as const;

interface Shapes {
  /** Drawn first, farthest away first. */
  far: readonly string[];
  tail: string;
  near: string;
  /** Lines on top: ear, limb folds. */
  lines: readonly string[];
  nose: string;
  eye: readonly [number, number];
}

const DOG: Shapes = {
  far: [
    "M74 86C58 106 48 128 43 148C42 158 42 164 40 170C33 172 29 176 30 182H51C52 178 52 174 53 170C55 162 57 156 58 150C64 138 74 122 94 112",
    "M152 102C144 112 142 122 145 130C149 138 152 142 152 148C152 156 150 164 148 170C142 172 138 176 140 182H162C163 178 163 174 163 170C166 160 168 150 169 142C166 134 166 128 172 118",
  ],
  tail: "M188 58C204 54 215 42 219 25C220 18 227 19 227 26C226 44 216 62 200 72",
  near:
    "M14 62C14 57 18 55 24 54C33 53 38 50 42 46C46 37 54 33 62 34C72 36 80 46 92 50C104 54 122 55 140 54C158 53 176 52 186 56" +
    "C196 60 202 70 202 82C202 94 200 102 204 112C208 122 216 130 219 138C219 148 215 160 213 170C213 175 213 178 212 182H190" +
    "C188 176 193 172 199 170C202 162 203 152 202 146C196 138 184 130 176 118C174 112 170 106 164 103C150 106 132 120 114 124" +
    "C113 132 113 142 111 150C110 158 110 164 110 172C110 177 110 180 109 182H88C86 176 91 172 97 170C98 162 97 156 96 150" +
    "C96 138 94 124 92 114C86 108 80 102 76 94C72 86 66 80 58 76C52 76 46 76 40 75C30 77 20 78 16 72C13 69 13 65 14 62Z",
  lines: ["M56 37C49 46 50 62 58 70C66 66 71 54 68 42", "M114 124C119 110 117 90 107 74", "M164 103C166 94 172 86 180 82"],
  nose: "M14 62C14 57 18 55 22 55C23 60 19 64 14 64Z",
  eye: [43, 53],
};

const CAT: Shapes = {
  far: [
    "M76 92C60 110 49 132 45 150C44 160 44 164 42 170C35 172 31 176 32 182H52C53 178 53 174 54 170C55 162 57 156 58 150C65 138 76 128 94 116",
    "M152 112C144 118 142 126 145 132C150 138 154 144 154 150C154 158 152 164 150 170C143 172 140 176 142 182H164C165 178 164 174 164 170C167 160 169 152 170 144C168 138 168 132 172 122",
  ],
  tail: "M194 74C212 72 220 52 216 34C214 20 224 10 232 17C237 23 230 27 228 34C232 58 222 84 204 94",
  near:
    "M22 70C20 64 22 58 26 52L28 30L44 40C48 39 52 39 56 40L71 30L72 52C76 62 84 68 98 70C118 74 138 66 160 66C182 66 198 74 204 90" +
    "C207 100 206 108 208 116C212 126 219 134 221 142C220 150 217 160 215 170C215 175 216 178 214 182H192C190 176 194 172 200 170" +
    "C203 162 204 154 203 148C194 144 182 136 176 124C172 118 168 116 162 116C146 124 130 130 114 130C113 138 112 146 111 152" +
    "C110 160 110 166 110 172C111 177 110 180 109 182H90C87 176 91 172 97 170C98 162 97 156 97 150C97 140 95 128 92 120" +
    "C84 114 78 106 74 98C70 94 66 90 62 88C50 90 36 88 28 82C24 79 22 74 22 70Z",
  lines: ["M114 130C119 116 117 100 108 86", "M162 116C164 106 170 98 180 94", "M34 74L16 72M34 78L18 82"],
  nose: "M22 68L27 68L24 72Z",
  eye: [36, 60],
};

export const STANDING: Readonly<Record<Species, Shapes>> = { dog: DOG, cat: CAT };

/** The standing animal; far limbs are drawn lighter than near ones. */
export function Standing({ species }: { species: Species }): JSX.Element {
  const { far, tail, near, lines, nose, eye } = STANDING[species];
  return (
    <g>
      {far.map((path) => (
        <path class="far" key={path} d={path} />
      ))}
      <path class="skin" d={tail} />
      <path class="skin" d={near} />
      {lines.map((path) => (
        <path key={path} d={path} />
      ))}
      <path class="solid" d={nose} />
      <circle class="solid" cx={eye[0]} cy={eye[1]} r="2" />
    </g>
  );
}
