/* A limb cut across: how a tape goes round it, and a cuff of some width on it. True to scale: the width is drawn as its share of
   the circumference, which comes in; must not know which share fits. */
import type { JSX } from "preact";
import { Band, Drawing, type Heard } from "./drawing";

const LIMB_ACROSS = 30;
const CIRCUMFERENCE = Math.PI * LIMB_ACROSS;
const [LEFT, RIGHT, MIDDLE] = [20, 50, 64];
const TOP = 16;
/** The circumference laid straight, beside the limb. */
const RULE_X = 88;

/** The cut across with its two bones, and the limb below it. */
function Limb(): JSX.Element {
  return (
    <g>
      <path class="skin" d={`M${LEFT} ${TOP}V116H${RIGHT}V${TOP}`} />
      <ellipse class="skin" cx={(LEFT + RIGHT) / 2} cy={TOP} rx="15" ry="7" />
      <ellipse cx="32" cy="15" rx="4.500" ry="2.500" />
      <ellipse cx="41" cy="18" rx="2.500" ry="1.500" />
    </g>
  );
}

/** The tape once round, its end lying over its marks. */
export function TapeDrawing({ label }: Heard): JSX.Element {
  return (
    <Drawing size={[120, 120]} label={label}>
      <Limb />
      <path class="skin" d="M19 58C24 66 46 66 51 58L112 44V54L51 70C46 78 24 78 19 70Z" />
      <path d="M26 70V74M32 71V76M38 71V76M44 70V74M58 60V64M66 58V63M74 56V60M82 54V59M90 52V56M98 50V55M106 48V52" />
    </Drawing>
  );
}

/** A cuff whose width is this share of the circumference; beside it the circumference laid straight, with the width on it. */
export function CuffDrawing({ share_permille, label }: Heard & { share_permille: number }): JSX.Element {
  const width = (CIRCUMFERENCE * share_permille) / 1000;
  const ends = [MIDDLE - CIRCUMFERENCE / 2, MIDDLE + CIRCUMFERENCE / 2];
  return (
    <Drawing size={[120, 120]} label={label}>
      <Limb />
      <Band at={[35, MIDDLE]} width={width} across={36} kind="now" />
      <path d={`M${RULE_X} ${ends[0]}V${ends[1]}M${RULE_X - 6} ${ends[0]}h12M${RULE_X - 6} ${ends[1]}h12`} />
      <Band at={[RULE_X, MIDDLE]} width={width} across={10} kind="now" />
      <path class="fine dashed" d={`M54 ${MIDDLE - width / 2}H${RULE_X - 8}M54 ${MIDDLE + width / 2}H${RULE_X - 8}`} />
    </Drawing>
  );
}
