/* What is begun on this phone and not filed yet, the newest first: measurements with their quiet times, and changes of an animal half typed. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { Draft, PatientCard } from "../../offline/journal";
import { dayAndTime } from "../../parts/figures";
import { patientOf } from "../animal/animals";
import { isOrphan, type Form } from "../forms_begun";
import { draftLines, type DraftLine } from "./draft_lines";
import { thePhone } from "../place";
import { useRead } from "../use_read";

function Line({ id, line, about }: DraftLine): JSX.Element {
  return (
    <li>
      <a class="row" href={`#/measure/${id}`} aria-label={say("draft-continue", { name: `${line} ${about}` })}>
        <strong>{line}</strong> <span class="small quiet">{about}</span>
      </a>
    </li>
  );
}

/** The animal a half-typed change is about. */
function animalOf(form: Draft, cards: readonly PatientCard[]): PatientCard | undefined {
  const [, id] = (form.content as Form).about.split("/");
  return cards.find((card) => card.id === id);
}

function ChangeLine({ form, card }: { form: Draft; card: PatientCard }): JSX.Element {
  return (
    <li>
      <a class="row" href={`#/patient/${card.id}`}>
        <strong>{say("draft-change", { name: patientOf(card).name })}</strong>
        <span class="small quiet">{dayAndTime(form.updatedMs)}</span>
      </a>
    </li>
  );
}

function OrphanLine({ form, onAdd }: { form: Draft; onAdd: (about: string) => void }): JSX.Element {
  const { about, texts } = form.content as Form;
  return (
    <li>
      <button type="button" class="row" onClick={() => onAdd(about)}>
        <strong>{say("draft-new", { name: texts["name"] || texts["mark"] || say("draft-name-none") })}</strong>
        <span class="small quiet">{dayAndTime(form.updatedMs)}</span>
      </button>
    </li>
  );
}

/** `onAdd` opens the form about a new animal. */
export function Drafts({ onAdd }: { onAdd: (about: string) => void }): JSX.Element | null {
  const drafts = useRead(() => thePhone().drafts()) ?? [];
  const forms = useRead(() => thePhone().forms()) ?? [];
  const cards = useRead(() => thePhone().patients()) ?? [];
  const changes = forms.flatMap((form) => [animalOf(form, cards)].flatMap((card) => (card ? [{ form, card }] : [])));
  const orphans = forms.filter((form) => isOrphan(form, drafts));
  if (drafts.length + changes.length + orphans.length === 0) return null;
  return (
    <section>
      <h2>{say("patients-drafts")}</h2>
      <ul class="list">
        {draftLines(drafts, Date.now()).map((one) => <Line key={one.id} {...one} />)}
        {changes.map(({ form, card }) => <ChangeLine key={form.id} form={form} card={card} />)}
        {orphans.map((form) => <OrphanLine key={form.id} form={form} onAdd={onAdd} />)}
      </ul>
    </section>
  );
}
