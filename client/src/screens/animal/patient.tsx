/* One animal: what to know before a hand goes near it, *Measure*, how it was measured last, and all that is known of it.
   Until the record has a change, this phone's latest wording is shown, and that it is only here. */
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { Patient1 as Patient } from "../../contract/wire_types";
import { say } from "../../contract/words";
import type { OutboxEntry, PatientCard, Visit } from "../../offline/journal";
import { dayAndTime } from "../../parts/figures";
import { StateWord } from "../../parts/state_word";
import { inTraining } from "../../parts/training_ground";
import { kebab } from "../../parts/word_ids";
import { measuredLine, whoLine } from "./animal_words";
import { inOneLine, patientOf } from "./animals";
import { shownState } from "../outbox/entry_state";
import { isBegun } from "../forms_begun";
import { isPlaced, resultSetOfVisit } from "../measure/open";
import { startWith } from "../measure/start_measuring";
import { cardAfter, type JustFiled } from "./form_over";
import { Page } from "../page";
import { Glance } from "./patient_glance";
import { HandlingForm } from "./patient_handling";
import { Sites } from "./patient_sites";
import { Visits } from "./patient_visits";
import { WhoForm } from "./patient_who_form";
import { thePhone } from "../place";
import { dayOf } from "./sites_not_used";
import { isBackFromHelp } from "../route";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import { useRead } from "../use_read";

export function PatientPage({ id }: { id: string }): JSX.Element {
  const cards = useRead(() => thePhone().patients(), [id]);
  const begun = useBegun(id);
  const card = cards?.find((one) => one.id === id);
  if (cards && !card) {
    return (
      <Page title={say("round-title")}>
        <p>{say("patient-not-known")}</p>
      </Page>
    );
  }
  return card && begun ? <Known card={card} begun={begun} /> : <Page title={say("round-title")} />;
}

const FORMS = ["who", "site", "handling"] as const;
type FormName = (typeof FORMS)[number];

/** The forms about this animal that a killed tab left half done; undefined until that is known. */
function useBegun(id: string): ReadonlySet<FormName> | undefined {
  const [begun, setBegun] = useState<ReadonlySet<FormName> | undefined>(undefined);
  useEffect(() => {
    const asked = FORMS.map(async (name) => ((await isBegun(`${name}/${id}`)) ? [name] : []));
    Promise.all(asked).then((names) => setBegun(new Set(names.flat())), () => setBegun(new Set()));
  }, [id]);
  return begun;
}

function Known({ card, begun }: { card: PatientCard; begun: ReadonlySet<FormName> }): JSX.Element {
  useState(() => isBackFromHelp() || unfolded.clear()); // once, before the folds are drawn
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const visits = useRead(() => thePhone().visits(card.id), [card.id]);
  const patient = patientOf(card);
  const day = dayOf(Date.now());
  return (
    <Page title={patient.name}>
      <Glance patient={patient} day={day} />
      <p>{whoLine(patient, Date.now())}</p>
      {!card.inRecord && <NotInRecord />}
      <StorageProblem word={trouble} />
      <button type="button" class="button act wide" onClick={() => void startWith(card).catch((failure: unknown) => setTrouble(storageWord(failure)))}>
        {say("measure")}
      </button>
      <Last visits={visits} />
      <Fold title={say("sites-title")} open={begun.has("site")}>
        <Sites card={card} day={day} begun={begun.has("site")} />
      </Fold>
      <Fold title={say("handling-title")} open={begun.has("handling")}>
        <Handling card={card} />
      </Fold>
      <Fold title={say("who-title")} open={begun.has("who")}>
        <Who card={card} begun={begun.has("who")} />
      </Fold>
      <Visits visits={visits} />
      <Changes id={card.id} />
    </Page>
  );
}

/** Said of the exception alone, and of what it is: the same word above every visit would be taken for the visit's. */
function NotInRecord(): JSX.Element {
  return (
    <div>
      {!inTraining.value && <p class="small">{say("patient-not-in-record")}</p>}
      <StateWord state="waiting" />
    </div>
  );
}

/** The folds that are open, while this page or Help over it is. */
const unfolded = new Set<string>();

function Fold({ title, open, children }: { title: string; open: boolean; children: ComponentChildren }): JSX.Element {
  const [isOpen, setOpen] = useState(open || unfolded.has(title));
  const toggle = (next: boolean): void => {
    setOpen(next);
    if (next) unfolded.add(title);
    else unfolded.delete(title);
  };
  return (
    <details class="more fold" open={isOpen} onToggle={(event) => toggle(event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen && <div class="stack">{children}</div>}
    </details>
  );
}

/** How it was measured last: the first thing to do alike. */
function Last({ visits }: { visits: readonly Visit[] | undefined }): JSX.Element | null {
  const measured = visits?.filter((visit) => (resultSetOfVisit(visit)?.readings.length ?? 0) > 0) ?? [];
  const last = measured[0];
  const placed = measured.find(isPlaced);
  const set_placed = placed && placed !== last ? resultSetOfVisit(placed) : undefined;
  const set = last && resultSetOfVisit(last);
  if (!last || !set) return null;
  return (
    <section>
      <h2>{say("measured-last")}</h2>
      <p>{say("measured-last-line", { how: measuredLine(set), when: dayAndTime(last.startedMs) })}</p>
      {placed && set_placed && <p>{say("measured-last-noted", { how: measuredLine(set_placed), when: dayAndTime(placed.startedMs) })}</p>}
    </section>
  );
}

/** Filed, the form begins anew with what was filed; given up, with what stands. */
function Handling({ card }: { card: PatientCard }): JSX.Element {
  const [{ round, saved, filed }, setOver] = useState<{ round: number; saved: boolean; filed?: JustFiled }>({ round: 0, saved: false });
  return (
    <>
      {saved && <p role="status">{say("change-kept")}</p>}
      <HandlingForm
        key={round} card={cardAfter(card, filed)}
        onSaved={(newest) => setOver({ round: round + 1, saved: true, filed: { over: card.letter.id, card: newest } })}
        onGivenUp={() => setOver({ round: round + 1, saved: false, ...(filed ? { filed } : {}) })}
      />
    </>
  );
}

function Who({ card, begun }: { card: PatientCard; begun: boolean }): JSX.Element {
  const [editing, setEditing] = useState(begun);
  if (editing) return <WhoForm card={card} onDone={() => setEditing(false)} />;
  return (
    <>
      <Facts patient={patientOf(card)} />
      <button type="button" class="button wide" onClick={() => setEditing(true)}>
        {say("who-change")}
      </button>
    </>
  );
}

function Facts({ patient }: { patient: Patient }): JSX.Element {
  const { identifiers = [] } = patient;
  return (
    <ul class="stack">
      <li>{inOneLine(patient.name, whoLine(patient, Date.now()))}</li>
      {identifiers.map(({ kind, text }) => (
        <li key={`${kind}-${text}`}>{say("identifier-line", { kind: say(`identifier-${kebab(kind)}`), text })}</li>
      ))}
    </ul>
  );
}

/** Own changes of this animal that are not in the record yet, each with its reason and where it is. */
function Changes({ id }: { id: string }): JSX.Element | null {
  const entries = useRead(() => thePhone().outbox(), [id]) ?? [];
  const isChange = ({ letter, state }: OutboxEntry): boolean => letter?.kind === "patient" && letter.amends === id && state !== "stored";
  const changes = entries.filter(isChange);
  if (changes.length === 0) return null;
  return (
    <section class="stack">
      <h2>{say("changes-title")}</h2>
      <ul class="list">
        {changes.map((entry) => (
          <li class="stack" key={entry.id}>
            <p>{inOneLine(dayAndTime(entry.letter?.made_at_ms ?? 0), entry.letter?.reason)}</p>
            <StateWord state={shownState(entry, thePhone().status.value.sending)} />
          </li>
        ))}
      </ul>
    </section>
  );
}
