/* What the forms of an animal say and ask when somebody saved it anew meanwhile. What is taken over and what is in dispute says meanwhile.ts. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import type { Problem } from "../../parts/problems";
import type { Filled, Form } from "../forms_begun";
import { chosenIn, typedIn, type KeptForm } from "../kept_form";
import { thePhone } from "../place";
import { inDispute, isKnown, keptHere, settled, takenStill, tookOver, type Fact } from "./meanwhile";

/** A fact with its label and with what it is, in words, where it is not text as typed. */
export interface ToldFact {
  readonly fact: Fact;
  readonly label: string;
  readonly told: (filled: Filled) => string;
}

const factsOf = (told: readonly ToldFact[]): Fact[] => told.map(({ fact }) => fact);

/** The form as it stands over the wording of now; nothing is written until something is typed. */
export function overNow(form: KeptForm, now: Filled, told: readonly ToldFact[]): KeptForm {
  const settle = (one: Form): Form => settled(one, now, factsOf(told));
  const change = (how: (head: Form) => Form): void => form.change((head) => how(settle(head)));
  return {
    ...form,
    shown: settle(form.shown),
    head: () => settle(form.head()),
    change,
    type: (field, text) => change((head) => typedIn(head, field, text)),
    choose: (field, value) => change((head) => chosenIn(head, field, value)),
  };
}

/** The animal as it stands on this phone at this moment: more may have come in since it was painted. */
export async function newestOf(card: PatientCard): Promise<PatientCard> {
  return (await thePhone().patients()).find(({ id }) => id === card.id) ?? card;
}

const idOf = ([field]: Fact): string => `meanwhile-${field}`;

/** What must be chosen before the form can be saved. */
export function meanwhileProblems(form: Form, now: Filled, told: readonly ToldFact[]): Problem[] {
  const open = inDispute(form, now, factsOf(told));
  const asked = told.filter(({ fact }) => open.includes(fact));
  return asked.map(({ fact, label }) => ({ field: idOf(fact), sentence: say("ask-meanwhile", { field: label }) }));
}

/** Is it certain that somebody saved the animal since? Of a form kept by an earlier build it may be the form alone that differs. */
export function isChanged(form: Form, open: readonly Fact[], taken: readonly Fact[]): boolean {
  return taken.length > 0 || open.some((fact) => isKnown(form, fact));
}

interface Props {
  form: KeptForm;
  now: Filled;
  told: readonly ToldFact[];
}

/** Nothing while nobody changed anything. */
export function Meanwhile({ form, now, told }: Props): JSX.Element | null {
  const open = inDispute(form.shown, now, factsOf(told));
  const still = takenStill(form.shown, factsOf(told));
  const taken = told.filter(({ fact }) => still.includes(fact)).map(({ label }) => label);
  if (taken.length + open.length === 0) return null;
  return (
    <div class="note stack" role="status">
      <p>{say(isChanged(form.shown, open, still) ? "meanwhile-changed" : "meanwhile-differs")}</p>
      {taken.length > 0 && <p>{say("meanwhile-taken", { fields: taken.join(", ") })}</p>}
      {told.filter(({ fact }) => open.includes(fact)).map((one) => <Both key={one.label} form={form} now={now} one={one} />)}
    </div>
  );
}

/** Both wordings of one fact, and the choice. */
function Both({ form, now, one: { fact, label, told } }: Omit<Props, "told"> & { one: ToldFact }): JSX.Element {
  const inWords = (filled: Filled): string => told(filled).trim() || say("meanwhile-nothing");
  return (
    <div class="stack" id={idOf(fact)} tabIndex={-1} role="group" aria-label={label}>
      <p>{say(isKnown(form.shown, fact) ? "meanwhile-both" : "meanwhile-both-unknown", { field: label, here: inWords(form.shown), there: inWords(now) })}</p>
      <button type="button" class="button" onClick={() => form.change((head) => keptHere(head, now, fact))}>
        {say("meanwhile-keep", { text: inWords(form.shown) })}
      </button>
      <button type="button" class="button" onClick={() => form.change((head) => tookOver(head, now, fact))}>
        {say("meanwhile-take", { text: inWords(now) })}
      </button>
    </div>
  );
}
