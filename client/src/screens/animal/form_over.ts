/* What becomes of a form about an animal when it is over: given up, or filed before the page has heard of it. Pure. */
import type { LetterParts, PatientCard } from "../../offline/journal";
import type { KeptForm } from "../kept_form";

/** Nothing of the form stays, and only then it is given up: one that is on the disk still would come back unasked. */
export function giveUp(form: Pick<KeptForm, "drop">, onGivenUp: () => void, onTrouble: (failure: unknown) => void): Promise<void> {
  return form.drop().then(onGivenUp, onTrouble);
}

/** The wording that was just filed, and the letter the page showed at that moment. */
export interface JustFiled {
  readonly over: string;
  readonly card: PatientCard;
}

/** The animal as it stands once a change of it is filed. */
export function cardFiled(before: PatientCard, { body }: Pick<LetterParts, "body">, id: string): PatientCard {
  return { ...before, inRecord: false, letter: { ...before.letter, id, body: { ...body } } };
}

/** The animal as painted; right after a filing, until the page has read again, as filed. */
export function cardAfter(painted: PatientCard, filed: JustFiled | undefined): PatientCard {
  return filed?.over === painted.letter.id ? filed.card : painted;
}
