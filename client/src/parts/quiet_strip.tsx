/* The quiet times that run just now, the next to finish first: which animal, how long still, and at what time it is ready. One that is
   over is told by its words, a filled mark and the whole row turned over. Silent. Must not know of screens or count by itself. */
import type { JSX } from "preact";
import { say } from "../contract/words";

/** One quiet time as it is shown; `left` and `ready_at` are ready-made times. */
export interface QuietRow {
  id: string;
  href: string;
  /** The animal and its mark. */
  name: string;
  isOver: boolean;
  left: string;
  ready_at: string;
  /** Per mille of the need that is over, 0 to 1000. */
  done_permille: number;
  /** Something about the clock that must be known, as a sentence. */
  doubt?: string | undefined;
}

function Row({ row }: { row: QuietRow }): JSX.Element {
  const { name, isOver, left, ready_at, doubt } = row;
  return (
    <li>
      <a class="quiet-row" href={row.href} data-over={String(isOver)}>
        <strong>{name}</strong>
        <span>{say(isOver ? "quiet-row-over" : "quiet-row-left", { left, at: ready_at })}</span>
        {doubt && <span class="small quiet-doubt">{doubt}</span>}
        <span class="quiet-line" aria-hidden="true">
          <span style={`inline-size: ${row.done_permille / 10}%`} />
        </span>
      </a>
    </li>
  );
}

/** Nothing where none runs. `most` rows are shown, and how many more there are. */
export function QuietStrip({ rows, most = rows.length }: { rows: readonly QuietRow[]; most?: number }): JSX.Element | null {
  if (rows.length === 0) return null;
  const more = rows.length - most;
  return (
    <section class="quiet-strip" aria-label={say("quiet-strip-title")}>
      <ul>{rows.slice(0, most).map((row) => <Row key={row.id} row={row} />)}</ul>
      {more > 0 && <a class="link small" href="#/round">{say("quiet-strip-more", { n: more })}</a>}
    </section>
  );
}
