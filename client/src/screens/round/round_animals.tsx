/* All animals on this phone, by latest visit: who each is, when it was measured last, and a quiet time started from its row. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { AnimalLine } from "../animal/animal_line";
import { matching, patientOf } from "../animal/animals";
import { openOf } from "../measure/open";
import { quietOfVisit } from "../measure/quiet";
import { thePhone } from "../place";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import { useRead } from "../use_read";

/** Animals with a draft: those whose quiet time runs or ran, and for which none is offered. */
function useQuiet(): ReadonlySet<string | undefined> {
  const drafts = useRead(() => thePhone().drafts()) ?? [];
  return new Set(drafts.map(openOf).filter((open) => quietOfVisit(open, Date.now())).map(({ measurement }) => measurement.patient));
}

async function begin(card: PatientCard): Promise<void> {
  const { startQuiet } = await import("../measure/start_quiet"); // the rules it asks are no part of the first paint
  await startQuiet(card);
}

export function Animals({ search }: { search: string }): JSX.Element {
  const cards = useRead(() => thePhone().patients());
  const quiet = useQuiet();
  const found = matching(cards ?? [], search);
  return (
    <section class="stack">
      <h2>{say("patients-all")}</h2>
      {cards && cards.length === 0 && <p>{say("patients-none")}</p>}
      {cards && cards.length > 0 && found.length === 0 && <p role="status">{say("patients-none-found", { text: search })}</p>}
      <ul class="list">
        {found.map((card) => (
          <li key={card.id}>
            <Animal card={card} isQuiet={quiet.has(card.id)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Animal({ card, isQuiet }: { card: PatientCard; isQuiet: boolean }): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const { name } = patientOf(card);
  return (
    <>
      <StorageProblem word={trouble} />
      <div class="animal">
        <a class="row" href={`#/patient/${card.id}`}>
          <AnimalLine card={card} />
        </a>
        {!isQuiet && (
          <button type="button" class="button small" aria-label={say("round-quiet-for", { name })} onClick={() => void begin(card).catch((failure: unknown) => setTrouble(storageWord(failure)))}>
            {say("round-quiet")}
          </button>
        )}
      </div>
    </>
  );
}
