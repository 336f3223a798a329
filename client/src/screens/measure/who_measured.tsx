/* Who is measured, said in the head of Measure: never more than two lines beside the links, so that the parts keep their room.
   Must not cut a mark short: it tells an animal from the next one. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Open } from "./open";

/** Characters of a mark that stand beside the species in the two lines of a narrow head. */
const BESIDE_MOST = 12;

function isLong(mark: string | undefined): mark is string {
  return mark !== undefined && mark.length > BESIDE_MOST;
}

/** Name over species and a short mark; without an animal the species stands first. */
export function WhoMeasured({ open }: { open: Open }): JSX.Element {
  const species = say(`species-${open.measurement.species}`);
  const beside = [species, isLong(open.mark) ? undefined : open.mark].filter(Boolean).join(" · ");
  return (
    <h1>
      {open.name ?? species}
      <span class="small quiet">{open.name === undefined ? say("draft-name-none") : beside}</span>
    </h1>
  );
}

/** A long mark, for a line of its own; undefined where it stands beside the species. */
export function markBelow(open: Open): string | undefined {
  return open.name !== undefined && isLong(open.mark) ? open.mark : undefined;
}
