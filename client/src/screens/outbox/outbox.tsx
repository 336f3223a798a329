/* The outbox: every entry made on this phone, where it is, when it was filed, and why one of them needs a person; those first.
   What was filed for another practice is named too. Nothing is ever taken off by hand. In training nothing waits to be sent, and no
   figure of the record stands by the list. */
import type { JSX } from "preact";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { say } from "../../contract/words";
import type { OutboxEntry, PatientCard } from "../../offline/journal";
import { dayAndTime } from "../../parts/figures";
import { StateWord } from "../../parts/state_word";
import { inTraining } from "../../parts/training_ground";
import { Differs } from "../measure/both_results";
import { shownState } from "./entry_state";
import { animalOf, inNeed, nameOf, reasonOf } from "./outbox_entries";
import { Page } from "../page";
import { thePhone } from "../place";
import { useRead } from "../use_read";

interface EntryProps {
  entry: OutboxEntry;
  cards: readonly PatientCard[];
  sending: boolean;
}

function Entry({ entry, cards, sending }: EntryProps): JSX.Element {
  const state = shownState(entry, sending);
  const { letter, tries } = entry;
  const [reason, animal] = [reasonOf(entry, state), animalOf(entry)];
  return (
    <li class="stack">
      <p>
        <strong>{nameOf(entry, cards)}</strong>
      </p>
      <StateWord state={state} />
      {reason && <p>{reason}</p>}
      {letter && <p class="small quiet">{say("outbox-filed", { when: dayAndTime(letter.made_at_ms) })}</p>}
      {letter?.reason && <p class="small">{say("outbox-why", { reason: letter.reason })}</p>}
      {tries > 0 && state !== "stored" && <p class="small">{say("sync-tries", { count: tries })}</p>}
      <Differs phone={letter?.assessment} server={entry.serverAssessment} measurement={letter?.body as unknown as Measurement | undefined} />
      {animal && (
        <a class="link" href={`#/patient/${animal}`}>
          {say("outbox-open")}
        </a>
      )}
      {letter?.kind === "bag" && (
        <a class="link" href="#/bag">
          {say("outbox-open-bag")}
        </a>
      )}
    </li>
  );
}

function About(): JSX.Element {
  const { keptByBrowser, lastPulledMs, nextTryMs, unsent, unsentElsewhere = 0 } = thePhone().status.value;
  return (
    <div class="small quiet">
      <p>{say("outbox-elsewhere", { n: unsentElsewhere })}</p>
      {unsent > 0 && nextTryMs !== undefined && <p>{say("sync-next-try", { when: dayAndTime(nextTryMs) })}</p>}
      <p>{lastPulledMs === undefined ? say("sync-never-pulled") : say("sync-last-pulled", { when: dayAndTime(lastPulledMs) })}</p>
      {keptByBrowser !== undefined && <p>{keptByBrowser ? say("sync-kept-by-browser") : say("sync-not-kept-by-browser", { waiting: unsent + unsentElsewhere })}</p>}
    </div>
  );
}

/** What the record's list would be sent by; in training, that this one is not. */
function Sending(): JSX.Element {
  if (inTraining.value) return <p class="note">{say("outbox-training")}</p>;
  return (
    <button type="button" class="button act wide" onClick={() => void thePhone().syncNow()}>
      {say("sync-send-now")}
    </button>
  );
}

export function Outbox(): JSX.Element {
  const entries = useRead(() => thePhone().outbox());
  const cards = useRead(() => thePhone().patients()) ?? [];
  const { sending } = thePhone().status.value;
  return (
    <Page title={say("outbox-title")}>
      <Sending />
      {entries && entries.length === 0 && <p>{say("outbox-empty")}</p>}
      <ol class="list">
        {inNeed(entries ?? [], sending).map((entry) => (
          <Entry key={entry.number} entry={entry} cards={cards} sending={sending} />
        ))}
      </ol>
      {!inTraining.value && <About />}
    </Page>
  );
}
