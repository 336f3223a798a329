/* Draws the row of readings. Filled when a reading counts, hollow when not; the same is said in words for those who hear it. */
import type { JSX } from "preact";
import type { Mark, SeriesShape } from "./series_shape";

function MarkShape({ mark }: { mark: Mark }): JSX.Element {
  const kind = mark.counts ? "counts" : "not";
  const { x, y } = mark;
  if (mark.shape === "round") return <circle class={kind} cx={x} cy={y} r="6.5" stroke-width="2" />;
  if (mark.shape === "above") return <path class={kind} d={`M${x - 8} ${y + 6}L${x} ${y - 8}L${x + 8} ${y + 6}Z`} stroke-width="2" />;
  return <path class={kind} d={`M${x - 7} ${y}H${x + 7}`} stroke-width="3" />;
}

/** The row of readings; `label` is what a screen reader says for the whole of it. */
export function Series({ shape, label }: { shape: SeriesShape; label: string }): JSX.Element {
  const { width, height, base, mean, interval } = shape;
  return (
    <svg class="series" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      <path class="base" d={`M0 ${base}H${width}`} />
      {shape.edges.map((edge) => (
        <g key={edge.mmhg}>
          <path class="edge" d={`M0 ${edge.y}H${width - 40}`} />
          {edge.label_y !== undefined && (
            <text x={width} y={edge.label_y} text-anchor="end">
              {edge.mmhg}
            </text>
          )}
        </g>
      ))}
      {interval && <rect class="interval" x="0" y={interval.top} width={width - 40} height={interval.bottom - interval.top} />}
      {mean !== undefined && <path class="mean" d={`M0 ${mean}H${width - 40}`} />}
      {shape.marks.map((mark) => (
        <g key={mark.id}>
          <MarkShape mark={mark} />
          <text x={mark.x} y={mark.label_y} text-anchor="middle">
            {mark.label}
          </text>
        </g>
      ))}
    </svg>
  );
}
