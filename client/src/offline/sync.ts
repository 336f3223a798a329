/**
 * Hands in what waits and fetches what is new: one run of the loop, over ports handed in.
 * Touches no global, knows no browser, keeps no state but the pace it is given; so that a simulator can drive it.
 * It marks an entry by the server's own answer to that entry and by nothing else.
 */
import { type Outgoing, type Page, type PulledEntry, writeBundle } from "./bundle.ts";
import { type Digest, type Place, beginning, follow } from "./chain.ts";
import * as pacing from "./pace.ts";
import type { Pace } from "./pace.ts";
import type { NetworkTrouble } from "./phone_types.ts";
import { type Answer, type Reply, type Trouble, isTrouble, readAnswers, readEpoch, readPulled } from "./replies.ts";

/** What the phone keeps. Every promise resolves after its transaction completed. */
export interface SyncStore {
  /** The oldest waiting entries, opened, within both limits but one at least; those set aside alone and last. */
  waiting(limit: { entries: number; bytes: number }, without: ReadonlySet<number>): Promise<Outgoing[]>;
  keepAnswers(answers: readonly { entry: Outgoing; answer: Answer }[], atMs: number): Promise<void>;
  countTry(entry: number, triesNow: number): Promise<void>;
  /** The epoch under which entries were last answered; undefined before the first. */
  knownEpoch(): Promise<string | undefined>;
  /** Marks everything once taken as waiting, and the epoch as known. */
  offerAgain(epoch: string): Promise<void>;
  cursor(): Promise<Place | undefined>;
  keepCursor(place: Place): Promise<void>;
  /** First marks own entries among them, then keeps rows and cursor in one transaction. */
  keepPage(entries: readonly PulledEntry[], place: Place): Promise<void>;
  keepContact(contact: { clockOffsetMs?: number; pulledMs?: number }): Promise<void>;
}

export interface SyncNetwork {
  push(bundle: Uint8Array<ArrayBuffer>): Promise<Reply>;
  pull(epoch: string, position: number): Promise<Reply>;
  me(): Promise<Reply>;
}

export interface Ports {
  readonly store: SyncStore;
  readonly network: SyncNetwork;
  /** ms UTC. */
  readonly clock: () => number;
  /** 0 to below 1. */
  readonly random: () => number;
  readonly sha256: Digest;
}

export interface Aim {
  readonly practice: string;
  readonly device: string;
  /** False while nobody is signed in: then it hands in and fetches nothing. */
  readonly mayRead: boolean;
}

/** How a run ended. `signInNeeded` is undefined when nothing was learnt about it. */
export interface Outcome {
  readonly network?: NetworkTrouble;
  readonly signInNeeded?: boolean;
  readonly nextTryMs?: number;
}

interface Run extends Ports {
  readonly aim: Aim;
  readonly pace: Pace;
  /** Entries that failed alone in this run, with the server there. */
  aloneFailures: number;
  hasBegunAgain: boolean;
}

type Ended = Trouble | undefined;

const RECORD_DIFFERS: Trouble = { code: "record_differs", isSizeSuspected: false, isServerThere: true, waitMs: 0 };

/** One run: hand in until nothing but resting entries is left, then fetch to the end. Rejects only when the store does. */
export async function syncOnce(ports: Ports, aim: Aim, pace: Pace): Promise<Outcome> {
  const run: Run = { ...ports, aim, pace, aloneFailures: 0, hasBegunAgain: false };
  let pushed = await handIn(run);
  const pulled = aim.mayRead ? await fetchAll(run) : undefined;
  if (run.hasBegunAgain && pushed === undefined) pushed = await handIn(run);
  return outcomeOf(run, pushed, pulled);
}

function outcomeOf(run: Run, pushed: Ended, pulled: Ended): Outcome {
  const asksSignIn = [pushed, pulled].some((ended) => ended?.code === "sign_in");
  const lasting = [pushed, pulled].find((ended) => ended !== undefined && ended.code !== "sign_in");
  if (lasting === undefined) pacing.allWell(run.pace);
  else pacing.waitAfterFailure(run.pace, run.clock(), run.random, lasting.waitMs);
  const knowsSignIn = asksSignIn || (run.aim.mayRead && pulled === undefined);
  return {
    ...(lasting === undefined ? {} : { network: asNetworkTrouble(lasting) }),
    ...(knowsSignIn ? { signInNeeded: asksSignIn } : {}),
    ...(lasting === undefined ? {} : { nextTryMs: pacing.nextTryMs(run.pace) }),
  };
}

/** `cursor_void` has its own way in a pull; anywhere else it is an answer the server should not give. */
function asNetworkTrouble({ code }: Trouble): NetworkTrouble {
  return code === "cursor_void" || code === "sign_in" ? "server_trouble" : code;
}

async function handIn(run: Run): Promise<Ended> {
  for (;;) {
    const batch = await nextBatch(run);
    if (batch.length === 0) return undefined;
    const ended = await handInBatch(run, batch);
    if (ended !== undefined) return ended;
  }
}

async function nextBatch(run: Run): Promise<Outgoing[]> {
  const limit = { entries: run.pace.limit, bytes: pacing.MOST_BYTES };
  const resting = pacing.restingAt(run.pace, run.clock());
  const { last } = run.pace;
  if (last === undefined || run.pace.limit > 1) return run.store.waiting(limit, resting);
  const others = await run.store.waiting(limit, new Set([...resting, last]));
  return others.length > 0 ? others : run.store.waiting(limit, resting);
}

/** undefined = go on with what is left. */
async function handInBatch(run: Run, batch: readonly Outgoing[]): Promise<Ended> {
  const { aim, clock, network } = run;
  const beganMs = clock();
  const answers = readAnswers(await network.push(writeBundle(aim.practice, aim.device, batch)), batch);
  if (isTrouble(answers)) return afterFailedBatch(run, batch, answers);
  await learnEpoch(run, answers.epoch);
  const marks = batch.map((entry, at) => ({ entry, answer: answers.answers[at] as Answer }));
  await run.store.keepAnswers(marks, clock());
  await run.store.keepContact({ clockOffsetMs: offset(answers.serverTimeMs, beganMs, clock()) });
  await afterDelivery(run);
  return undefined;
}

/** The server works for others: what failed alone before this failed by its own fault, once more. */
async function afterDelivery(run: Run): Promise<void> {
  run.aloneFailures = 0;
  delete run.pace.last;
  pacing.larger(run.pace);
  for (const [number, tries] of run.pace.suspects) {
    await run.store.countTry(number, tries + 1);
    pacing.rest(run.pace, number, run.clock(), tries + 1);
  }
  run.pace.suspects.clear();
}

function afterFailedBatch(run: Run, batch: readonly Outgoing[], trouble: Trouble): Ended {
  if (!trouble.isSizeSuspected) return trouble;
  if (batch.length > 1) {
    pacing.smaller(run.pace, batch.length);
    return trouble.isServerThere ? undefined : trouble;
  }
  const [entry] = batch as [Outgoing];
  run.pace.last = entry.number;
  if (!trouble.isServerThere) return trouble;
  pacing.suspect(run.pace, entry.number, run.clock(), entry.tries);
  run.aloneFailures += 1;
  return run.aloneFailures < 2 ? undefined : trouble;
}

async function learnEpoch(run: Run, epoch: string): Promise<void> {
  if ((await run.store.knownEpoch()) === epoch) return;
  await run.store.offerAgain(epoch);
}

async function fetchAll(run: Run): Promise<Ended> {
  for (;;) {
    const step = await fetchPage(run);
    if (step === "end") return undefined;
    if (step !== "more") return step;
  }
}

async function fetchPage(run: Run): Promise<Trouble | "more" | "end"> {
  const { store, clock, network } = run;
  const from = await placeToReadFrom(run);
  if ("code" in from) return from;
  const beganMs = clock();
  const page = readPulled(await network.pull(from.epoch, from.position), run.aim.practice);
  if (isTrouble(page)) return page.code === "cursor_void" ? beginAgain(run, from) : page;
  if (page.epoch !== from.epoch) return beginAgain(run, from);
  const place = await follow(from, page.entries, run.sha256);
  if (place === undefined) return RECORD_DIFFERS;
  if (page.entries.length > 0) await store.keepPage(page.entries, place);
  await store.keepContact(contactOf(page, beganMs, clock()));
  return page.more ? "more" : "end";
}

async function placeToReadFrom(run: Run): Promise<Place | Trouble> {
  const [cursor, known] = [await run.store.cursor(), await run.store.knownEpoch()];
  if (cursor !== undefined) return cursor;
  if (known !== undefined) return beginning(known);
  const learnt = readEpoch(await run.network.me());
  return isTrouble(learnt) ? learnt : beginning(learnt.epoch);
}

/**
 * The server's record is no longer the one read so far. Entries are marked before the cursor goes back: killed in
 * between, the old cursor is refused again and this is repeated.
 */
async function beginAgain(run: Run, from: Place): Promise<Trouble | "more"> {
  if (run.hasBegunAgain) return RECORD_DIFFERS;
  run.hasBegunAgain = true;
  const learnt = readEpoch(await run.network.me());
  if (isTrouble(learnt)) return learnt;
  const isHeadBehind = from.epoch === learnt.epoch; // the same record, but shorter than what was read
  const isNews = (await run.store.knownEpoch()) !== learnt.epoch; // else a hand-in has heard of it before
  if (isHeadBehind || isNews) await run.store.offerAgain(learnt.epoch);
  await run.store.keepCursor(beginning(learnt.epoch));
  return "more";
}

function contactOf(page: Page, beganMs: number, endedMs: number): { clockOffsetMs?: number; pulledMs?: number } {
  return {
    ...(page.serverTimeMs === undefined ? {} : { clockOffsetMs: offset(page.serverTimeMs, beganMs, endedMs) }),
    ...(page.more ? {} : { pulledMs: endedMs }),
  };
}

/** Server minus phone, ms; wrong by at most half the way there and back. */
function offset(serverMs: number, beganMs: number, endedMs: number): number {
  return serverMs - Math.round((beganMs + endedMs) / 2);
}
