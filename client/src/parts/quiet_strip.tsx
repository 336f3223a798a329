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

function Row({ row, slim }: { row: QuietRow; slim: boolean }): JSX.Element {
  const { name, isOver, left, ready_at, doubt } = row;
  const word = slim ? "quiet-row-slim" : isOver ? "quiet-row-over" : "quiet-row-left";
  return (
    <li>
      <a class="quiet-row" href={row.href} data-over={String(isOver)}>
        <strong>{name}</strong> <span>{say(word, { left, at: ready_at })}</span>
        {!slim && <Rest row={row} doubt={doubt} />}
      </a>
    </li>
  );
}

function Rest({ row, doubt }: { row: QuietRow; doubt: string | undefined }): JSX.Element {
  return (
    <>
      {doubt && <span class="small quiet-doubt">{doubt}</span>}
      <span class="quiet-line" aria-hidden="true">
        <span style={`inline-size: ${row.done_permille / 10}%`} />
      </span>
    </>
  );
}

interface Props {
  rows: readonly QuietRow[];
  /** So many rows are shown, and how many more there are. */
  most?: number;
  /** Only those that are over, the first of them in one low line: while readings are taken the room is needed below. */
  slim?: boolean;
}

/** Nothing where none runs. */
export function QuietStrip({ rows, most = rows.length, slim = false }: Props): JSX.Element | null {
  const shown = (slim ? rows.filter(({ isOver }) => isOver) : rows).slice(0, most);
  const more = rows.length - shown.length;
  if (shown.length === 0) return null;
  return (
    <section class={slim ? "quiet-strip slim" : "quiet-strip"} aria-label={say("quiet-strip-title")}>
      <ul>{shown.map((row) => <Row key={row.id} row={row} slim={slim} />)}</ul>
      {!slim && more > 0 && <a class="link small" href="#/round">{say("quiet-strip-more", { n: more })}</a>}
    </section>
  );
}
