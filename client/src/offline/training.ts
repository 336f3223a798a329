/**
 * Training: the whole door of the phone's record over a store of its own, so that every screen works in it unchanged.
 * It knows no network and no sending, and of the record only who is signed in and what its status says: it has nothing
 * by which a letter made here could get into the outbox.
 */
import { type Signal, signal } from "@preact/signals";
import { seal, sealBytes } from "./boxes.ts";
import { isId, newId } from "./ids.ts";
import { makeLetter } from "./letter_bytes.ts";
import type * as Types from "./phone_types.ts";
import { bagsOf, patientsOf, visitsOf } from "./projection.ts";
import { type Opened, readDrafts, readForms, readKnown, readOutbox } from "./reading.ts";
import { readSetting, settingName, settingRow } from "./settings.ts";
import type { Shelf } from "./sync_store.ts";
import { type NewRow, TRAINING, type TrainingStore, openTrainingStore } from "./training_store.ts";
import { PhoneTrouble } from "./trouble.ts";
import * as writes from "./writes.ts";

/** All that training sees of the record. It can file nothing, keep nothing and send nothing there. */
export type RecordSeen = Pick<Types.Phone, "who" | "status" | "signIn" | "signOut">;

export interface TrainingPhone extends Types.Phone {
  /** Takes away everything made in training and files the samples anew. Nothing of the record is touched. */
  startAnew(): Promise<void>;
}

/**
 * Opens training. `samples` are filed when nothing has been filed in it yet.
 * @throws PhoneTrouble `sign_in_needed`, or the store's own trouble
 */
export async function openTraining(record: RecordSeen, samples: readonly Types.LetterParts[]): Promise<TrainingPhone> {
  const training = new OpenTraining(record, await openTrainingStore(), samples);
  await training.fill();
  return training;
}

class OpenTraining implements TrainingPhone {
  readonly who: Signal<Types.SignedIn | undefined>;
  /** The record's own: what is not sent is said in training too, and nothing made here is counted in it. */
  readonly status: Signal<Types.Status>;
  readonly changed: Signal<number> = signal(0);
  readonly #record: RecordSeen;
  readonly #store: TrainingStore;
  readonly #samples: readonly Types.LetterParts[];
  readonly #shelf: Shelf;
  #opened: Opened = new Map();
  #queue: Promise<unknown> = Promise.resolve();

  constructor(record: RecordSeen, store: TrainingStore, samples: readonly Types.LetterParts[]) {
    this.who = record.who;
    this.status = record.status;
    this.#record = record;
    this.#store = store;
    this.#samples = samples;
    const { database, key } = store;
    this.#shelf = { outbox: database, practiceDatabase: database, key, committed: () => this.#committed() };
  }

  async fill(): Promise<void> {
    if ((await readOutbox(this.#shelf)).length > 0) return;
    await this.#inOrder(async () => this.#store.fill(await this.#sampleRows(), false));
  }

  async startAnew(): Promise<void> {
    await this.#inOrder(async () => {
      await this.#store.fill(await this.#sampleRows(), true);
      this.#opened = new Map();
    });
  }

  async drafts(): Promise<Types.Draft[]> {
    return this.who.value === undefined ? [] : readDrafts(this.#shelf);
  }

  async forms(): Promise<Types.Draft[]> {
    return this.who.value === undefined ? [] : readForms(this.#shelf);
  }

  keepDraft({ id, updatedMs, content }: Types.Draft, ifThere = false): Promise<void> {
    return this.#inOrder(async () => {
      const box = await seal(this.#store.key, "drafts", id, { updatedMs, content });
      await (ifThere ? writes.rewriteDraft : writes.putDraft)(this.#store.database, { id, box });
    });
  }

  dropDraft(id: string): Promise<void> {
    return this.#inOrder(() => writes.removeDraft(this.#store.database, id));
  }

  file(parts: Types.LetterParts, draftId?: string, setting?: string): Promise<Types.Filed> {
    return this.#inOrder(() => this.#fileNow(parts, draftId, setting));
  }

  async outbox(): Promise<Types.OutboxEntry[]> {
    return this.who.value === undefined ? [] : readOutbox(this.#shelf);
  }

  async patients(): Promise<Types.PatientCard[]> {
    return this.who.value === undefined ? [] : patientsOf(await readKnown(this.#shelf, this.#opened));
  }

  async bags(): Promise<Types.BagCard[]> {
    return this.who.value === undefined ? [] : bagsOf(await readKnown(this.#shelf, this.#opened));
  }

  async visits(patient: string): Promise<Types.Visit[]> {
    return this.who.value === undefined ? [] : visitsOf(await readKnown(this.#shelf, this.#opened), patient);
  }

  remember(name: string, value: unknown): Promise<void> {
    return this.#inOrder(async () => writes.putMeta(this.#store.database, [await settingRow(this.#shelf, name, value)]));
  }

  recall(name: string): Promise<unknown> {
    return readSetting(this.#shelf, name);
  }

  signIn(login: string, password: string): Promise<Types.SignedIn> {
    return this.#record.signIn(login, password);
  }

  signOut(): Promise<void> {
    return this.#record.signOut();
  }

  /** Training is never sent. */
  async syncNow(): Promise<void> {}

  close(): void {
    this.#store.database.letGo();
  }

  async #fileNow(parts: Types.LetterParts, draftId?: string, setting?: string): Promise<Types.Filed> {
    const { row, letter } = await this.#made(parts, draftId !== undefined && isId(draftId) ? draftId : newId());
    const number = await writes.addEntry(this.#store.database, row, draftId, setting && settingName(this.#shelf, setting));
    return { id: letter.id, number, sha: row.sha, letter };
  }

  /** A letter of training, and its row ready to be written. */
  async #made(parts: Types.LetterParts, id: string): Promise<{ row: NewRow; letter: Types.Letter }> {
    const author = this.who.value?.person;
    if (author === undefined) throw new PhoneTrouble("sign_in_needed");
    const { letter, sha, bytes } = await makeLetter(parts, { id, author, basis: 0, nowMs: Date.now() });
    const box = await sealBytes(this.#store.key, "entries", letter.id, bytes);
    return { row: { id: letter.id, practice: TRAINING, sha, state: "training", tries: 0, box }, letter };
  }

  #sampleRows(): Promise<NewRow[]> {
    return Promise.all(this.#samples.map(async (sample) => (await this.#made(sample, newId())).row));
  }

  /** One write after the other, in the order they were asked for. */
  #inOrder<Result>(work: () => Promise<Result>): Promise<Result> {
    const done = this.#queue.then(work);
    this.#queue = done.catch(() => undefined);
    void done.then(() => this.#committed(), () => undefined);
    return done;
  }

  #committed(): void {
    this.changed.value += 1;
  }
}
