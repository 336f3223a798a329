/* A form that is kept as it is typed: each press is on disk before it is painted, a killed tab finds it again, and filing takes it
   away in the same transaction, so that nothing filed is offered once more. Each window has a form of its own: the one that is open
   elsewhere is held by that window. Must not know what a form asks. */
import { useEffect, useState } from "preact/hooks";
import { newId, type LetterParts, type Phone } from "../offline/journal";
import { isAbout, nameOfLock, type Filled, type Form } from "./forms_begun";
import { keeperOf, type Keeper } from "./measure/keeper";
import { troubleCode } from "./measure/keeping";
import { thePhone } from "./place";

export interface KeptForm {
  /** What is kept, and therefore shown. */
  readonly shown: Form;
  /** The newest, kept or not. */
  head(): Form;
  /** The code of what keeps it from the disk. */
  readonly trouble: string | undefined;
  change(how: (form: Form) => Form): void;
  type(field: string, text: string): void;
  /** `value` absent takes the choice back. */
  choose(field: string, value: string | undefined): void;
  /**
   * Files one letter and the form is gone, both at once. Where the page goes on with another form about the same (`goesOn`), what
   * was pressed during the filing stands in that one. @throws PhoneTrouble
   */
  file(parts: LetterParts, goesOn?: boolean): Promise<string>;
  /** Given up: nothing of it stays. */
  drop(): Promise<void>;
}

/** Takes a form for this window until the function answered is called; undefined while another window has it. */
function hold(id: string): Promise<(() => void) | undefined> {
  if (!("locks" in navigator)) return Promise.resolve(() => undefined); // such a browser has one window at a time for us
  return new Promise((tell) => {
    void navigator.locks.request(nameOfLock(id), { ifAvailable: true }, (lock) => {
      if (!lock) return tell(undefined);
      return new Promise<void>((letGo) => tell(letGo));
    });
  });
}

export interface Taken {
  id: string;
  letGo: () => void;
  form: Form;
}

/** Forms this window is about to let go: their last press is on its way to the disk. */
let leaving: Promise<unknown> = Promise.resolve();

/** Lets go once everything typed is on the disk: whoever takes the form after reads all of it. */
export function letGoAfter(kept: Promise<unknown>, letGo: () => void): void {
  leaving = Promise.all([leaving, kept.then(letGo, letGo)]);
}

/** The newest form about something that no window holds, held from now on; a new one where there is none. */
export async function take(phone: Phone, about: string, first: Filled): Promise<Taken> {
  await leaving;
  for (const draft of (await phone.forms()).filter(isAbout(about))) {
    const letGo = await hold(draft.id);
    if (letGo) return { id: draft.id, letGo, form: draft.content as Form };
  }
  const id = newId();
  return { id, letGo: (await hold(id)) ?? (() => undefined), form: { form: true, about, ...first, before: first } };
}

/** The form about something, begun or new; undefined until that is known. */
export function useKeptForm(about: string, first: Filled): KeptForm | undefined {
  const [open, setOpen] = useState<{ id: string; keeper: Keeper<Form>; phone: Phone } | undefined>(undefined);
  useEffect(() => {
    const phone = thePhone();
    let leave = (): void => undefined;
    let isOver = false;
    void take(phone, about, first).then((taken) => {
      if (isOver) return taken.letGo();
      const write = (content: Form): Promise<void> => phone.keepDraft({ id: taken.id, updatedMs: Date.now(), content });
      const keeper = keeperOf(taken.form, write, troubleCode);
      leave = () => letGoAfter(keeper.retry(), taken.letGo);
      setOpen({ id: taken.id, phone, keeper });
    });
    return () => {
      isOver = true;
      leave();
    };
  }, [about]);
  return open && asKeptForm(open.id, open.keeper, open.phone);
}

function asKeptForm(id: string, keeper: Keeper<Form>, phone: Phone): KeptForm {
  return {
    shown: keeper.shown.value,
    head: keeper.head,
    trouble: keeper.unkept.value?.code,
    change: (how) => void keeper.act(how),
    type: (field, text) => void keeper.act((head) => typedIn(head, field, text)),
    choose: (field, value) => void keeper.act((head) => chosenIn(head, field, value)),
    async file(parts, goesOn = false) {
      const filed = keeper.head();
      await keeper.retry(); // a press still on its way to the disk must not come back after the filing
      const letter = (await phone.file(parts, id)).id;
      const since = goesOn ? pressedSince(filed, keeper.head()) : undefined;
      if (since) await phone.keepDraft({ id: newId(), updatedMs: Date.now(), content: since }).catch(() => undefined); // the status says so
      return letter;
    },
    async drop() {
      await keeper.retry();
      await phone.dropDraft(id);
    },
  };
}

/** What was pressed while a form was filed, begun from what was filed; undefined where nothing was. */
export function pressedSince(filed: Form, head: Form): Form | undefined {
  if (head === filed) return undefined;
  const { form, about, texts, chosen } = head;
  return { form, about, texts, chosen, before: { texts: filed.texts, chosen: filed.chosen } };
}

/** The form with a text typed. */
export function typedIn(form: Form, field: string, text: string): Form {
  return { ...form, texts: { ...form.texts, [field]: text } };
}

/** The form with an answer chosen, or with its choice taken back. */
export function chosenIn(form: Form, field: string, value: string | undefined): Form {
  const { [field]: _was, ...others } = form.chosen;
  return { ...form, chosen: value === undefined ? others : { ...others, [field]: value } };
}
