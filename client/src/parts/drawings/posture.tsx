/* The five postures, dog and cat. Answers how the animal lies, sits or stands; must not rank them. */
import type { JSX } from "preact";
import { Drawing, type Heard, type Species } from "./drawing";
import { Standing } from "./outlines";
import { Resting, RESTING_SIZE } from "./resting";

export const POSTURES = ["lateral", "sternal", "sitting", "standing", "in_lap"] as const;
export type Posture = (typeof POSTURES)[number];

const GROUND = "M2 86.500H118";
const MAT = "M2 86L16 30H119L112 86Z";

/** Somebody sitting on a chair, seen from the left; the arm comes last, round the animal. */
const PERSON = {
  chair: "M104 34V90M104 74H74V90",
  body: "M78 25C70 28 68 36 70 48L72 58H34C25 58 22 64 23 71L25 90H37L38 74H88C97 74 99 66 98 56L95 34C94 27 90 24 86 24",
  arm: "M84 34C90 38 90 50 84 54C76 57 66 55 58 54C53 53 53 47 58 47C66 48 74 48 79 46C80 42 80 38 81 35",
};

function InLap({ species }: { species: Species }): JSX.Element {
  return (
    <g>
      <path class="fine" d={PERSON.chair} />
      <g transform="translate(20 15) scale(0.5)">
        <Resting species={species} rest="sternal" />
      </g>
      <circle class="skin" cx="81" cy="14" r="10" />
      <path class="skin" d={PERSON.body} />
      <path class="skin" d={PERSON.arm} />
    </g>
  );
}

/** How each animal is set into the frame; one on its side a little higher, since its feet come toward us. */
const SET: Readonly<Record<Exclude<Posture, "in_lap">, string>> = {
  lateral: "translate(0 -5)",
  sternal: "",
  sitting: "",
  standing: "translate(8 6.400) scale(0.44)",
};

function Animal({ species, posture }: { species: Species; posture: Posture }): JSX.Element {
  if (posture === "in_lap") return <InLap species={species} />;
  return (
    <g transform={SET[posture] || undefined}>
      {posture === "standing" ? <Standing species={species} /> : <Resting species={species} rest={posture} />}
    </g>
  );
}

/** Facing left. Lying on its side the animal is seen from a little above, on a mat. */
export function PostureDrawing({ species, posture, label }: Heard & { species: Species; posture: Posture }): JSX.Element {
  return (
    <Drawing size={RESTING_SIZE} label={label}>
      {posture === "lateral" && <path class="fine" d={MAT} />}
      {posture !== "lateral" && posture !== "in_lap" && <path class="fine" d={GROUND} />}
      <Animal species={species} posture={posture} />
    </Drawing>
  );
}
