/* Two gentle ways to keep an animal still: in a towel, in its own basket. Must not advise one. */
import type { JSX } from "preact";
import { Drawing, type Heard, type Species } from "./drawing";
import { Resting, RESTING_SIZE } from "./resting";

const TOWEL = "M48 40C62 34 88 36 102 46C112 54 116 74 112 86H36C30 80 34 72 40 68C44 60 44 50 48 40Z";
const FOLDS = "M48 40C54 52 52 70 44 86M84 40C94 52 96 70 90 86M60 38C64 46 66 52 66 58";
const BASKET = "M4 60H116L108 88H12Z";
const WEAVE = "M8 70H112M10 79H110M30 60L34 88M60 60V88M90 60L86 88";

/** The animal on its chest, its body wrapped or behind the rim. */
export function RestraintDrawing({ species, kind, label }: Heard & { species: Species; kind: "towel" | "basket" }): JSX.Element {
  return (
    <Drawing size={RESTING_SIZE} label={label}>
      <Resting species={species} rest="sternal" />
      <path class="skin" d={kind === "towel" ? TOWEL : BASKET} />
      <path class="fine" d={kind === "towel" ? FOLDS : WEAVE} />
    </Drawing>
  );
}
