/**
 * The door of this room for the screens: opens the phone's own record and hands out what can be asked of it.
 * Every word typed goes through here on its way to the disk; nothing may be shown as saved before its promise resolved.
 */
import { type Signal, signal } from "@preact/signals";
import { type Around, type Word, browserAround } from "./around.ts";
import { seal, sealBytes } from "./boxes.ts";
import { type Database, database } from "./database.ts";
import { isId, newId } from "./ids.ts";
import { makeLetter, sha256 } from "./letter_bytes.ts";
import type * as Types from "./phone_types.ts";
import { bagsOf, patientsOf, visitsOf } from "./projection.ts";
import { type Opened, readDrafts, readForms, readKnown, readOutbox } from "./reading.ts";
import { OUTBOX, practiceLayout } from "./rows.ts";
import { type Sending, sending } from "./sending.ts";
import { readSetting, settingName, settingRow } from "./settings.ts";
import { type Place, readPlace, signIn } from "./sign_in.ts";
import { counting, isSameStatus, NOT_TRYING, type Trying, statusNow } from "./status.ts";
import type { Pace } from "./pace.ts";
import { type Outcome, syncOnce } from "./sync.ts";
import { type Shelf, readBasis, readMeta, syncStore } from "./sync_store.ts";
import { PhoneTrouble, storageTroubleOf } from "./trouble.ts";
import * as writes from "./writes.ts";

export type * from "./phone_types.ts";
export { newId } from "./ids.ts";
export { PhoneTrouble } from "./trouble.ts";

/**
 * Opens the store, unwraps the data key and finds out who last signed in.
 * @throws PhoneTrouble `blocked` (an older window holds the store), `lost` (it does not open), `full`
 */
export async function openPhone(around: Around = browserAround()): Promise<Types.Phone> {
  const phone = new OpenPhone(around);
  await phone.start();
  return phone;
}

class OpenPhone implements Types.Phone {
  readonly who: Signal<Types.SignedIn | undefined> = signal(undefined);
  readonly status: Signal<Types.Status> = signal({ unsent: 0, needsYou: 0, ...NOT_TRYING });
  readonly changed: Signal<number> = signal(0);
  readonly #around: Around;
  readonly #outbox: Database;
  readonly #sending: Sending;
  #place: Place | undefined;
  #shelf: Shelf | undefined;
  #opened: Opened = new Map();
  #trying: Trying = NOT_TRYING;
  #queue: Promise<unknown> = Promise.resolve();
  readonly #recount = counting(
    () => statusNow(this.#outbox, this.#place?.key, this.#trying, this.status.value),
    (status) => (this.status.value = isSameStatus(status, this.status.value) ? this.status.value : status),
  );
  #stopWatching = () => {};

  constructor(around: Around) {
    this.#around = around;
    this.#outbox = database(OUTBOX, (storage) => this.#tell({ storage }));
    this.#sending = sending({
      clock: around.clock,
      later: around.later,
      alone: around.alone,
      run: (pace) => this.#runOnce(pace),
      tell: (trying) => this.#tell(trying),
      tellStorage: (trouble) => this.#tellStorage(trouble),
    });
  }

  async start(): Promise<void> {
    this.#around.channel.hear((word) => void this.#heard(word));
    await this.#settleAnew();
    await this.#recount();
    this.#stopWatching = this.#around.watch((reason) => void this.#sending.ask(reason));
    void this.#sending.ask("start");
  }

  close(): void {
    this.#stopWatching();
    this.#sending.stop();
    this.#around.channel.close();
    this.#shelf?.practiceDatabase.letGo();
    this.#outbox.letGo();
  }

  async drafts(): Promise<Types.Draft[]> {
    return this.who.value === undefined ? [] : readDrafts(this.#shelfOrThrow());
  }

  async forms(): Promise<Types.Draft[]> {
    return this.who.value === undefined ? [] : readForms(this.#shelfOrThrow());
  }

  keepDraft(draft: Types.Draft, ifThere = false): Promise<void> {
    return this.#inOrder(async () => {
      const { id, updatedMs, content } = draft;
      const box = await seal(this.#shelfOrThrow().key, "drafts", id, { updatedMs, content });
      await (ifThere ? writes.rewriteDraft : writes.putDraft)(this.#outbox, { id, box });
    }, () => this.#newsOfDraft());
  }

  dropDraft(id: string): Promise<void> {
    return this.#inOrder(() => writes.removeDraft(this.#outbox, id));
  }

  async file(parts: Types.LetterParts, draftId?: string, setting?: string): Promise<Types.Filed> {
    const filed = await this.#inOrder(() => this.#fileNow(parts, draftId, setting));
    await this.#recount(); // whoever waited for the filing must not read the count from before it
    void this.#sending.ask("filed");
    void this.#askToBeKept();
    return filed;
  }

  async outbox(): Promise<Types.OutboxEntry[]> {
    return this.who.value === undefined ? [] : readOutbox(this.#shelfOrThrow());
  }

  async patients(): Promise<Types.PatientCard[]> {
    return this.who.value === undefined ? [] : patientsOf(await readKnown(this.#shelfOrThrow(), this.#opened));
  }

  async bags(): Promise<Types.BagCard[]> {
    return this.who.value === undefined ? [] : bagsOf(await readKnown(this.#shelfOrThrow(), this.#opened));
  }

  async visits(patient: string): Promise<Types.Visit[]> {
    return this.who.value === undefined ? [] : visitsOf(await readKnown(this.#shelfOrThrow(), this.#opened), patient);
  }

  remember(name: string, value: unknown): Promise<void> {
    return this.#inOrder(async () => writes.putMeta(this.#outbox, [await settingRow(this.#shelfOrThrow(), name, value)]));
  }

  async recall(name: string): Promise<unknown> {
    return this.who.value === undefined ? undefined : readSetting(this.#shelfOrThrow(), name);
  }

  async signIn(login: string, password: string): Promise<Types.SignedIn> {
    const who = await this.#inOrder(async () => {
      const place = await signIn(this.#outbox, this.#around.network, login, password);
      this.#settle(place);
      return place.who as Types.SignedIn;
    });
    this.#around.channel.tell("place");
    this.#tell({ signInNeeded: false, signInToSend: false });
    void this.#sending.ask("pressed");
    return who;
  }

  async signOut(): Promise<void> {
    await this.#inOrder(async () => {
      await writes.putSignOut(this.#outbox);
      this.#settle(await readPlace(this.#outbox));
    });
    this.#around.channel.tell("place");
    void this.#sending.ask("pressed");
  }

  async syncNow(): Promise<void> {
    await this.#sending.ask("pressed");
    await this.#recount();
  }

  async #fileNow(parts: Types.LetterParts, draftId?: string, setting?: string): Promise<Types.Filed> {
    const shelf = this.#shelfOrThrow();
    const { key, practiceDatabase } = shelf;
    const who = this.who.value as Types.SignedIn;
    const clockOffset = (await readMeta(this.#outbox, "clock_offset_ms"))?.value;
    const made = await makeLetter(parts, {
      id: draftId !== undefined && isId(draftId) ? draftId : newId(this.#around.clock()),
      author: who.person,
      basis: await readBasis(practiceDatabase),
      nowMs: this.#around.clock(),
      ...(typeof clockOffset === "number" ? { clockOffsetMs: clockOffset } : {}),
    });
    const { letter, sha, bytes } = made;
    const box = await sealBytes(key, "entries", letter.id, bytes);
    const row = { id: letter.id, practice: who.practice, sha, state: "waiting" as const, tries: 0, box };
    const number = await writes.addEntry(this.#outbox, row, draftId, setting && settingName(shelf, setting));
    return { id: letter.id, number, sha, letter };
  }

  /** Writes run one after the other in the order they were asked for: an older draft must not land on a newer one. */
  #inOrder<Result>(work: () => Promise<Result>, news = () => this.#committed()): Promise<Result> {
    const done = this.#afterTheOthers(work);
    void done.then(news, () => undefined);
    return done.catch((trouble: unknown) => {
      this.#tellStorage(trouble);
      throw trouble;
    });
  }

  /** The queue follows the work alone: a screen that fails at the news of a commit must not stop all later writes. */
  #afterTheOthers<Result>(work: () => Promise<Result>): Promise<Result> {
    const done = this.#queue.then(work);
    this.#queue = done.catch(() => undefined);
    return done;
  }

  /** In order with this window's own signing in and out: what was read before must not be settled after. */
  #settleAnew(): Promise<void> {
    return this.#afterTheOthers(async () => this.#settle(await readPlace(this.#outbox)));
  }

  #shelfOrThrow(): Shelf {
    if (this.#shelf === undefined || this.who.value === undefined) throw new PhoneTrouble("sign_in_needed");
    return this.#shelf;
  }

  #settle(place: Place | undefined): void {
    if (place?.key.id !== this.#place?.key.id) {
      this.#shelf?.practiceDatabase.letGo();
      this.#shelf = place && this.#shelfOf(place);
    }
    // Nobody is signed in, or in another practice: no letter stays open.
    if (place?.who?.practice !== this.who.value?.practice) this.#opened = new Map();
    this.#place = place;
    this.who.value = place?.who;
  }

  #shelfOf({ key }: Place): Shelf {
    return {
      outbox: this.#outbox,
      practiceDatabase: database(practiceLayout(key.practice), (storage) => this.#tell({ storage })),
      key,
      committed: () => this.#committed(),
    };
  }

  async #runOnce(pace: Pace): Promise<Outcome | undefined> {
    if (this.#shelf === undefined || this.#place === undefined) return undefined;
    const { network, clock, random } = this.#around;
    const [{ device, key, who }, store] = [this.#place, syncStore(this.#shelf)];
    if (who === undefined) await this.#tellSignedOut();
    const routes = {
      me: () => network.me(),
      push: (bundle: Uint8Array<ArrayBuffer>) => network.push(key.practice, bundle),
      pull: (epoch: string, position: number) => network.pull(key.practice, epoch, position),
    };
    const ports = { store, network: routes, clock, random, sha256 };
    return syncOnce(ports, { practice: key.practice, device, mayRead: who !== undefined }, pace);
  }

  /** Signing out works without network; the server is told at the next contact. */
  async #tellSignedOut(): Promise<void> {
    if ((await readMeta(this.#outbox, "sign_out_due")) === undefined) return;
    const reply = await this.#around.network.signOut();
    if (!("failed" in reply) && reply.status < 500) await writes.removeSignOutDue(this.#outbox);
  }

  async #askToBeKept(): Promise<void> {
    if (this.status.value.keptByBrowser === true) return;
    const persisted = await this.#around.persist().catch(() => false);
    // When even this cannot be written the status says so already; it is asked again after the next filing.
    await this.#inOrder(() => writes.putMeta(this.#outbox, [{ name: "persisted", value: persisted }])).catch(() => {});
  }

  /** A draft is in no count: a key of the pad is one commit, and counting would stand between it and its paint. */
  #newsOfDraft(): void {
    if ((this.#trying.storage ?? this.status.value.storage) !== undefined) return this.#committed();
    this.#tellRows();
  }

  #tellRows(): void {
    this.changed.value += 1;
    this.#around.channel.tell("rows");
  }

  #committed(): void {
    this.#tellRows();
    const { storage } = this.#trying;
    // Only a reload ends `reload_needed`; whatever else still stands in the way is told again at once.
    if (storage !== "reload_needed") this.#trying = { ...this.#trying, storage: undefined };
    void this.#recount();
  }

  async #heard(word: Word): Promise<void> {
    try {
      if (word === "place") await this.#settleAnew();
    } catch (trouble) {
      return this.#tellStorage(trouble);
    }
    this.changed.value += 1;
    await this.#recount();
    if (this.status.value.unsent > 0) await this.#sending.ask("told");
  }

  #tell(trying: Partial<Trying>): void {
    this.#trying = { ...this.#trying, ...trying };
    void this.#recount();
  }

  #tellStorage(trouble: unknown): void {
    const storage = storageTroubleOf(trouble);
    if (storage !== undefined) this.#tell({ storage });
  }
}
