/* The place of a mean on a plain ruled line: three edges, one filled mark as for a reading that counts. Words stand beside it; it is never the only carrier. */
import type { JSX } from "preact";

const WIDTH = 336;
/** Scale of the line; a mean beyond it stands at its end. */
const FROM_MMHG = 90;
const TO_MMHG = 230;

interface Props {
  /** In tenths of mmHg. */
  mean: number;
  half_width?: number;
  edges: readonly number[];
  label: string;
}

function xOf(mmhg: number): number {
  const share = (mmhg - FROM_MMHG) / (TO_MMHG - FROM_MMHG);
  return 8 + Math.min(1, Math.max(0, share)) * (WIDTH - 16);
}

export function BandLine({ mean, half_width, edges, label }: Props): JSX.Element {
  const at = xOf(mean / 10);
  return (
    <svg class="band" viewBox={`0 0 ${WIDTH} 56`} role="img" aria-label={label}>
      <line x1="0" y1="26" x2={WIDTH} y2="26" />
      {edges.map((edge) => (
        <g key={edge}>
          <line x1={xOf(edge)} y1="18" x2={xOf(edge)} y2="34" />
          <text x={xOf(edge)} y="50" text-anchor="middle">
            {edge}
          </text>
        </g>
      ))}
      {half_width !== undefined && <line class="reach" x1={xOf((mean - half_width) / 10)} y1="26" x2={xOf((mean + half_width) / 10)} y2="26" />}
      <circle class="here" cx={at} cy="26" r="9" />
    </svg>
  );
}
