/* A form that is kept as it is typed: each press is on disk before it is painted, a killed tab finds it again, and filing takes it
   away in the same transaction, so that nothing filed is offered once more. Each window has a form of its own: the one that is open
   elsewhere is held by that window. Must not know what a form asks. */
import { useEffect, useState } from "preact/hooks";
import { newId, type LetterParts, type Phone } from "../offline/journal";
import { isAbout, nameOfLock, type Form } from "./forms_begun";
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
  type(field: string, text: string): void;
  /** `value` absent takes the choice back. */
  choose(field: string, value: string | undefined): void;
  /** Files one letter and the form is gone, both at once. @throws PhoneTrouble */
  file(parts: LetterParts): Promise<string>;
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

/** The newest form about something that no window holds, held from now on; a new one where there is none. */
export async function take(phone: Phone, about: string, first: Pick<Form, "texts" | "chosen">): Promise<Taken> {
  for (const draft of (await phone.forms()).filter(isAbout(about))) {
    const letGo = await hold(draft.id);
    if (letGo) return { id: draft.id, letGo, form: draft.content as Form };
  }
  const id = newId();
  return { id, letGo: (await hold(id)) ?? (() => undefined), form: { form: true, about, ...first } };
}

/** The form about something, begun or new; undefined until that is known. */
export function useKeptForm(about: string, first: Pick<Form, "texts" | "chosen">): KeptForm | undefined {
  const [open, setOpen] = useState<{ id: string; keeper: Keeper<Form>; phone: Phone } | undefined>(undefined);
  useEffect(() => {
    const phone = thePhone();
    let letGo: (() => void) | undefined;
    let isOver = false;
    void take(phone, about, first).then((taken) => {
      letGo = taken.letGo;
      if (isOver) return taken.letGo();
      const write = (content: Form): Promise<void> => phone.keepDraft({ id: taken.id, updatedMs: Date.now(), content });
      setOpen({ id: taken.id, phone, keeper: keeperOf(taken.form, write, troubleCode) });
    });
    return () => {
      isOver = true;
      letGo?.();
    };
  }, [about]);
  return open && asKeptForm(open.id, open.keeper, open.phone);
}

function asKeptForm(id: string, keeper: Keeper<Form>, phone: Phone): KeptForm {
  return {
    shown: keeper.shown.value,
    head: keeper.head,
    trouble: keeper.unkept.value?.code,
    type: (field, text) => void keeper.act((head) => ({ ...head, texts: { ...head.texts, [field]: text } })),
    choose: (field, value) => void keeper.act((head) => ({ ...head, chosen: chosenWith(head, field, value) })),
    async file(parts) {
      await keeper.retry(); // a press still on its way to the disk must not come back after the filing
      return (await phone.file(parts, id)).id;
    },
    async drop() {
      await keeper.retry();
      await phone.dropDraft(id);
    },
  };
}

function chosenWith({ chosen }: Form, field: string, value: string | undefined): Record<string, string> {
  const { [field]: _was, ...others } = chosen;
  return value === undefined ? others : { ...others, [field]: value };
}
