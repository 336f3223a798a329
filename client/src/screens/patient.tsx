/* One animal: who it is, how its visits ended, and *Measure*. A visit's whole basis opens below it. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Measurement1 as Measurement } from "../contract/wire_types";
import { say } from "../contract/words";
import type { PatientCard, Visit } from "../offline/journal";
import { dayAndTime } from "../parts/figures";
import { StateWord } from "../parts/state_word";
import type { Assessment } from "../rules/assessment";
import { Differs, resultLine } from "./measure/both_results";
import { Page } from "./page";
import { patientOf } from "./round";
import { thePhone } from "./place";
import { startWith } from "./measure/start_measuring";
import { StorageProblem, storageWord } from "./storage_problem";
import { useRead } from "./use_read";
import { WorkedOut } from "./measure/worked_out";

function OneVisit({ visit }: { visit: Visit }): JSX.Element {
  const assessment = visit.letter.assessment as Assessment | undefined;
  const shown = (visit.serverAssessment as Assessment | undefined) ?? assessment;
  return (
    <li class="stack">
      <h3>{dayAndTime(visit.startedMs)}</h3>
      {shown && <p>{resultLine(shown)}</p>}
      <StateWord state={visit.inRecord ? "stored" : (visit.state ?? "waiting")} />
      <Differs phone={assessment} server={visit.serverAssessment} />
      {shown && <WorkedOut measurement={visit.letter.body as unknown as Measurement} assessment={shown} />}
    </li>
  );
}

export function PatientPage({ id }: { id: string }): JSX.Element {
  const cards = useRead(() => thePhone().patients(), [id]);
  const card = cards?.find((one) => one.id === id);
  if (cards && !card) {
    return (
      <Page title={say("round-title")}>
        <p>{say("patient-not-known")}</p>
      </Page>
    );
  }
  return card ? <Known card={card} /> : <Page title={say("round-title")} />;
}

function Known({ card }: { card: PatientCard }): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const visits = useRead(() => thePhone().visits(card.id), [card.id]);
  const { name, species, mark } = patientOf(card);
  return (
    <Page title={name}>
      <p>{[say(`species-${species}`), mark].filter(Boolean).join(" · ")}</p>
      <StateWord state={card.inRecord ? "stored" : "waiting"} />
      <StorageProblem word={trouble} />
      <button type="button" class="button act wide" onClick={() => void startWith(card).catch((failure: unknown) => setTrouble(storageWord(failure)))}>
        {say("measure")}
      </button>
      <section class="stack">
        <h2>{say("patient-visits")}</h2>
        {visits && visits.length === 0 && <p>{say("patient-no-visits")}</p>}
        <ol class="list">
          {visits?.map((visit) => <OneVisit key={visit.id} visit={visit} />)}
        </ol>
      </section>
    </Page>
  );
}
