/* Prepare for offline: each thing a day without a network needs, tried now and said in one line with a shape and a word, and
   for each that is missing what to do. Must not say ready for anything it has not tried. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { sayHelp } from "../../contract/help_words";
import type { Facts, Finding } from "../../offline/self_test";
import { dayAndTime, tenths } from "../../parts/figures";
import { checkReadiness, isReady, readiness } from "../round/readiness";

const MEGABYTE = 1_000_000;
const GIGABYTE = 1_000_000_000;
/** From so many on tenths of a gigabyte tell nobody anything. */
const WHOLE_FROM_GB = 10;
const MINUTE_MS = 60_000;

/** Room in the unit a person would say, rounded down: never more than there is. */
export function roomTold(free_bytes: number): string {
  if (free_bytes < GIGABYTE) return sayHelp("room-mb", { n: String(Math.floor(free_bytes / MEGABYTE)) });
  const tenth = Math.floor((free_bytes * 10) / GIGABYTE);
  return sayHelp("room-gb", { n: tenths(tenth < WHOLE_FROM_GB * 10 ? tenth : tenth - (tenth % 10)) });
}

/** The figures the sentences of the checks may name. */
function figures({ shell, pulledMs, room, clockOffsetMs }: Facts): Record<string, string> {
  return {
    files: String(shell?.files ?? 0),
    missing: String(shell?.missing ?? 0),
    when: pulledMs === undefined ? "" : dayAndTime(pulledMs),
    free: room === undefined ? "" : roomTold(room.freeBytes),
    used: room === undefined ? "" : String(Math.round(room.usedPermille / 10)),
    minutes: clockOffsetMs === undefined ? "" : String(Math.round(Math.abs(clockOffsetMs) / MINUTE_MS)),
  };
}

/** Filled square: tried and there. Hollow triangle: missing. The word beside it says the same. */
function Mark({ ok }: { ok: boolean }): JSX.Element {
  return (
    <svg class="found-mark" viewBox="0 0 20 20" aria-hidden="true">
      {ok ? <path d="M3 3h14v14H3z" /> : <path d="M10 2 19 18H1z" />}
    </svg>
  );
}

function Found({ found, facts, onMend }: { found: Finding; facts: Facts; onMend: (check: Finding) => void }): JSX.Element {
  const mend = `mend-${found.check}-${found.why}`;
  const canMend = (found.check === "promise" || (found.check === "shell" && found.why === "missing")) && !found.ok;
  return (
    <li class="found" data-ok={found.ok ? "yes" : "no"}>
      <Mark ok={found.ok} />
      <div class="stack">
        <p>
          <strong>{sayHelp(`check-${found.check}`)}: {sayHelp(found.ok ? "check-there" : "check-missing")}</strong>
        </p>
        <p class="small">{sayHelp(`check-${found.check}-${found.why}`, figures(facts))}</p>
        {canMend && (
          <button type="button" class="button" onClick={() => onMend(found)}>
            {sayHelp(mend)}
          </button>
        )}
      </div>
    </li>
  );
}

async function mendNow({ check }: Finding): Promise<string | undefined> {
  if (check === "promise") {
    const { askToKeep } = await import("../../offline/self_test");
    return (await askToKeep()) ? undefined : "promise-refused";
  }
  const { browserShell, fetchMissing } = await import("../../offline/shell_kept");
  return fetchMissing(browserShell()).then(() => undefined, () => "shell-not-fetched");
}

export function Prepare(): JSX.Element {
  const [working, setWorking] = useState(true);
  const [told, setTold] = useState<string | undefined>(undefined);
  const look = async (before?: Finding): Promise<void> => {
    setWorking(true);
    setTold(before && (await mendNow(before)));
    await checkReadiness();
    setWorking(false);
  };
  useEffect(() => void look(), []);
  const found = readiness.value;
  return (
    <section class="stack" aria-labelledby="prepare">
      <h2 id="prepare">{sayHelp("prepare-title")}</h2>
      <p role="status" class="verdict">
        {working || !found ? sayHelp("prepare-working") : sayHelp(isReady() ? "prepare-ready" : "prepare-not-ready")}
      </p>
      {told && <p role="alert" class="note">{sayHelp(told)}</p>}
      <ul class="list">
        {found?.findings.map((one) => (
          <Found key={one.check} found={one} facts={found.facts} onMend={(check) => void look(check)} />
        ))}
      </ul>
      <button type="button" class="button wide" disabled={working} onClick={() => void look()}>
        {sayHelp("prepare-again")}
      </button>
    </section>
  );
}
