/* Two gentle ways to keep an animal still: in a towel, in its own basket. Must not advise one. */
import type { JSX } from "preact";
import { Drawing, type Heard, type Species } from "./drawing";
import { Resting, RESTING_SIZE } from "./resting";

const TOWEL = "M48 40C62 34 88 36 102 46C112 54 116 74 112 86H36C30 80 34 72 40 68C44 60 44 50 48 40Z";
const FOLDS = "M48 40C54 52 52 70 44 86M84 40C94 52 96 70 90 86M60 38C64 46 66 52 66 58";
const BASKET = "M2 60H118L114 88H6Z";
const WEAVE = "M3 69H117M5 78H115M31 60L33 88M60 60V88M89 60L87 88";

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
