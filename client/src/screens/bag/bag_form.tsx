/* One bag to be changed: its name, its cuffs, its things, and *Save bag*. Every press is kept on the phone before it is painted. */
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { newId, type BagCard, type Phone } from "../../offline/journal";
import { Problems, type Problem } from "../../parts/problems";
import { StateWord } from "../../parts/state_word";
import { TextField } from "../../parts/text_field";
import { BagCuffs } from "./bag_cuffs";
import { afterFailed, begun, editProblems, takenBack, THINGS, triedAgain, wordingOf, type Edit, type EditProblem } from "./bag_edit";
import { bodyOf } from "./bag_in_use";
import { openWords } from "./bag_item";
import { leftEdit, openEdit, renewed, whileFiled, type KeptEdit } from "./bag_kept";
import { BagThings } from "./bag_things";
import type { Keeper } from "../measure/keeper";
import { oneAtATime } from "../one_at_a_time";
import { thePhone } from "../place";
import { StorageProblem, storageWord } from "../phone/storage_problem";

interface Props {
  /** The bag as it stands; absent for a new one. */
  card: BagCard | undefined;
  /** There is no bag yet: widths kept by an earlier build are taken over. */
  isFirst: boolean;
  onWrong: (wrong: boolean) => void;
  onSaved: (id: string) => void;
}

/** A change of a bag, or a new bag with the id its letter will have: filed twice it is one. */
function begin(card: BagCard | undefined, isFirst: boolean, typed: string): Edit {
  const edit = begun(card && { ...card, body: bodyOf(card) }, isFirst ? say("bag-first-name") : "", typed);
  return card ? edit : { ...edit, as: newId() };
}

/** Where the phone remembers what is half typed of a bag. */
const nameOfEdit = (card: BagCard | undefined): string => `bag_edit:${card?.id ?? "new"}`;

/** The change that is under way on this phone, found again after a kill; undefined while it is looked for. */
function useEdit({ card, isFirst }: Props): [KeptEdit<Phone> | undefined, (next: Edit) => Promise<void>] {
  const [open, setOpen] = useState<KeptEdit<Phone> | undefined>(undefined);
  const held = useRef<KeptEdit<Phone> | undefined>(undefined);
  const hold = (next: KeptEdit<Phone>): void => setOpen((held.current = next));
  const phone = thePhone();
  useEffect(() => {
    let isOver = false;
    const typed = async (): Promise<unknown> => (isFirst ? phone.recall("bag") : "");
    const first = async (): Promise<Edit> => {
      const [widths, bags] = await Promise.all([typed(), phone.bags()]); // filed meanwhile, it is another than was painted
      return begin(card && (bags.find(({ id }) => id === card.id) ?? card), isFirst, typeof widths === "string" ? widths : "");
    };
    void openEdit(phone, nameOfEdit(card), first).then((found) => (isOver ? leftEdit(found) : hold(found)));
    return () => {
      isOver = true;
      if (held.current) leftEdit(held.current);
      held.current = undefined;
    };
  }, [phone]);
  const renew = async (next: Edit): Promise<void> => {
    if (held.current) hold(renewed(held.current, next));
    else if (open) await renewed(open, next).cleared; // the screen was left: a press made meanwhile goes with what was filed
  };
  return [open, renew];
}

/** A problem as a sentence. */
function sentenceOf({ field, word, facts }: EditProblem): Problem {
  return { field, sentence: say(word, { ...facts, ...(facts["field"] ? { field: say(facts["field"]) } : {}) }) };
}

/** The form; nothing until what was half-typed is found. */
export function BagForm(props: Props): JSX.Element | null {
  const [open, renew] = useEdit(props);
  return open ? <Changing {...props} open={open} renew={renew} /> : null;
}

interface ChangingProps extends Props {
  open: KeptEdit<Phone>;
  renew: (next: Edit) => Promise<void>;
}

function Changing({ card, isFirst, onWrong, onSaved, open, renew }: ChangingProps): JSX.Element {
  const { phone, name, keeper } = open;
  const edit = keeper.shown.value;
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const problems = edit.tried ? editProblems(edit).map(sentenceOf) : [];
  useEffect(() => onWrong(problems.length > 0), [problems.length]);

  const busy = useRef(false);

  async function save(): Promise<void> {
    setTrouble(undefined);
    await keeper.act(triedAgain);
    const head = keeper.head();
    if (editProblems(head).length > 0) return;
    const body = wordingOf(head, openWords(head));
    try {
      const parts = { kind: "bag" as const, body, ...(head.id ? { amends: head.id } : {}) };
      const filed = await phone.file(parts, head.id ? undefined : head.as, name); // and nothing half typed stays
      await renew({ ...(begun({ id: head.id ?? filed.id, letter: filed.letter, body }, "", "")) });
      onSaved(head.id ?? filed.id);
    } catch (failure) {
      setTrouble(storageWord(failure));
      await keeper.act((now) => afterFailed(now, failure, newId));
    }
  }

  const fields = { keeper, edit, problems };
  return (
    <div class="bag">
      <Problems problems={problems} asked={edit.tried} />
      {isFirst && (edit.body.cuffs?.length ?? 0) > 0 && edit.acts.length === 0 && <p class="note">{say("bag-taken-over")}</p>}
      {card && edit.from !== card.letter.id && edit.dirty && <p class="note" role="status">{say("bag-changed-meanwhile")}</p>}
      <TextField
        id="bag-name" label={say("bag-name")} mode="text" text={edit.name} newest={() => keeper.head().name} problems={problems}
        onText={(name) => keeper.act((head) => ({ ...head, name, dirty: true }))}
      />
      <BagCuffs {...fields} />
      {THINGS.map((kind) => <BagThings key={kind} kind={kind} {...fields} />)}
      <Undo keeper={keeper} edit={edit} />
      <StorageProblem word={trouble ?? (keeper.unkept.value && "kept-not")} />
      {edit.dirty || !card ? <p role="status">{say("bag-not-saved")}</p> : <StateWord state={card.inRecord ? "stored" : "waiting"} />}
      <button type="button" class="button act wide" onClick={() => void oneAtATime(busy, () => whileFiled(open, save))}>{say("bag-save")}</button>
      {edit.dirty && card && <button type="button" class="button wide" onClick={() => void renew(begin(card, isFirst, ""))}>{say("bag-drop-changes")}</button>}
    </div>
  );
}

/** Not while an item is open: its place in the list would be another's. */
function Undo({ keeper, edit }: { keeper: Keeper<Edit>; edit: Edit }): JSX.Element | null {
  const act = edit.acts[edit.acts.length - 1];
  if (!act || edit.item) return null;
  return (
    <button type="button" class="button" onClick={() => keeper.act(takenBack)}>
      {say("bag-undo", { what: say(act.word, act.facts) })}
    </button>
  );
}
