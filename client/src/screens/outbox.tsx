/* The outbox: every entry made on this phone, where it is, and why one of them needs a person. Nothing is ever taken off by hand. */
import type { JSX } from "preact";
import type { Measurement1 as Measurement, Patient1 as Patient } from "../contract/wire_types";
import { hasWords, say } from "../contract/words";
import type { OutboxEntry, PatientCard } from "../offline/journal";
import { dayAndTime } from "../parts/figures";
import { StateWord, type State } from "../parts/state_word";
import { kebab } from "../parts/word_ids";
import { Differs } from "./measure/both_results";
import { shownState } from "./entry_state";
import { Page } from "./page";
import { patientOf } from "./round";
import { thePhone } from "./place";
import { useRead } from "./use_read";

/** Why it needs a person: by the server's code where there are words for it, else by what happened to it. */
function reasonOf(entry: OutboxEntry, state: State): string | undefined {
  if (!["held", "refused", "set_aside"].includes(state)) return undefined;
  const code = entry.code ? kebab(entry.code) : "";
  const word = [`entry-${code}`, `error-${code}`, `why-${code}`].find((one) => hasWords(one)) ?? `entry-${kebab(state)}`;
  return say(word);
}

function nameOf(entry: OutboxEntry, cards: readonly PatientCard[]): string {
  const { letter } = entry;
  if (!letter) return say("outbox-unreadable");
  const when = dayAndTime(letter.made_at_ms);
  if (letter.kind === "patient") return say("outbox-patient", { name: (letter.body as unknown as Patient).name, when });
  const card = cards.find((one) => one.id === (letter.body as unknown as Measurement).patient);
  return card ? say("outbox-measurement", { name: patientOf(card).name, when }) : say("outbox-other", { when });
}

function Entry({ entry, cards, sending }: { entry: OutboxEntry; cards: readonly PatientCard[]; sending: boolean }): JSX.Element {
  const state = shownState(entry, sending);
  const reason = reasonOf(entry, state);
  const patient = entry.letter?.kind === "measurement" ? (entry.letter.body as unknown as Measurement).patient : entry.letter?.id;
  return (
    <li class="stack">
      <p>
        <strong>{nameOf(entry, cards)}</strong>
      </p>
      <StateWord state={state} />
      {reason && <p>{reason}</p>}
      {entry.tries > 0 && state !== "stored" && <p class="small">{say("sync-tries", { count: entry.tries })}</p>}
      <Differs phone={entry.letter?.assessment} server={entry.serverAssessment} />
      {patient && (
        <a class="link" href={`#/patient/${patient}`}>
          {say("outbox-open")}
        </a>
      )}
    </li>
  );
}

const NEEDS_FIRST: Record<State, number> = { held: 0, refused: 0, set_aside: 0, sending: 1, waiting: 1, stored: 2 };

export function Outbox(): JSX.Element {
  const { status } = thePhone();
  const entries = useRead(() => thePhone().outbox());
  const cards = useRead(() => thePhone().patients()) ?? [];
  const { sending, keptByBrowser, lastPulledMs, nextTryMs, unsent } = status.value;
  const rank = (entry: OutboxEntry): number => NEEDS_FIRST[shownState(entry, sending)];
  const sorted = [...(entries ?? [])].sort((one, other) => rank(one) - rank(other));
  return (
    <Page title={say("outbox-title")}>
      <button type="button" class="button act wide" onClick={() => void thePhone().syncNow()}>
        {say("sync-send-now")}
      </button>
      <div class="small quiet">
        {unsent > 0 && nextTryMs !== undefined && <p>{say("sync-next-try", { when: dayAndTime(nextTryMs) })}</p>}
        <p>{lastPulledMs === undefined ? say("sync-never-pulled") : say("sync-last-pulled", { when: dayAndTime(lastPulledMs) })}</p>
        {keptByBrowser !== undefined && <p>{say(keptByBrowser ? "sync-kept-by-browser" : "sync-not-kept-by-browser")}</p>}
      </div>
      {entries && entries.length === 0 && <p>{say("outbox-empty")}</p>}
      <ol class="list">
        {sorted.map((entry) => (
          <Entry key={entry.number} entry={entry} cards={cards} sending={sending} />
        ))}
      </ol>
    </Page>
  );
}
