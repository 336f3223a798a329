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

/** How a run ended. `signInNeeded` and `signInToSend` are undefined when nothing was learnt about them. */
export interface Outcome {
  readonly network?: NetworkTrouble;
  readonly signInNeeded?: boolean;
  /** The server does not know this phone any more (its cookie is gone): even handing in waits for a sign-in. */
  readonly signInToSend?: boolean;
  readonly nextTryMs?: number;
}

interface Run extends Ports {
  readonly aim: Aim;
  readonly pace: Pace;
  /** Entries that failed alone in this run, and what they met: none is tried twice in it. */
  readonly failedAlone: Map<Outgoing, Trouble>;
  /** What the latest of them met; undefined again as soon as anything gets through. */
  trouble: Ended;
  hasDelivered: boolean;
  hasBegunAgain: boolean;
}

type Ended = Trouble | undefined;

const RECORD_DIFFERS: Trouble = { code: "record_differs", isSizeSuspected: false, isServerThere: true, waitMs: 0 };

/** One run: hand in until only resting entries are left, then fetch to the end. Rejects only when the store does. */
export async function syncOnce(ports: Ports, aim: Aim, pace: Pace): Promise<Outcome> {
  const nothingYet = { failedAlone: new Map(), trouble: undefined, hasDelivered: false, hasBegunAgain: false };
  const run: Run = { ...ports, aim, pace, ...nothingYet };
  let pushed = await handIn(run);
  let pulled = aim.mayRead ? await fetchAll(run) : undefined;
  if (run.hasBegunAgain && pushed === undefined && pulled === undefined) {
    pushed = await handIn(run);
    pulled = await fetchAll(run);
  }
  await judgeFailures(run, aim.mayRead && pulled === undefined);
  return outcomeOf(run, pushed, pulled);
}

function outcomeOf(run: Run, pushed: Ended, pulled: Ended): Outcome {
  const asksSignIn = [pushed, pulled].some((ended) => ended?.code === "sign_in");
  const lasting = [pushed, pulled].find((ended) => ended !== undefined && ended.code !== "sign_in");
  if (lasting === undefined) pacing.allWell(run.pace);
  else pacing.waitAfterFailure(run.pace, run.clock(), run.random, lasting.waitMs);
  const knowsSignIn = asksSignIn || (run.aim.mayRead && pulled === undefined);
  const isUnknown = pushed?.code === "sign_in";
  return {
    ...(lasting === undefined ? {} : { network: asNetworkTrouble(lasting) }),
    ...(knowsSignIn ? { signInNeeded: asksSignIn } : {}),
    ...(isUnknown || run.hasDelivered ? { signInToSend: isUnknown } : {}),
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
    if (batch.length === 0) return run.trouble;
    const ended = await handInBatch(run, batch);
    if (ended !== undefined) return ended;
  }
}

/** What has not failed alone goes first, so that one bad entry never stands before the others. */
async function nextBatch(run: Run): Promise<Outgoing[]> {
  const resting = pacing.restingAt(run.pace, run.clock());
  const out = [...resting, ...[...run.failedAlone.keys()].map(({ number }) => number)];
  const limit = { entries: run.pace.limit, bytes: pacing.MOST_BYTES };
  const good = await run.store.waiting(limit, new Set([...out, ...run.pace.goLast]));
  return good.length > 0 ? good : run.store.waiting({ ...limit, entries: 1 }, new Set(out));
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
  run.hasDelivered = true;
  run.trouble = undefined;
  pacing.larger(run.pace);
  for (const { number } of batch) run.pace.goLast.delete(number);
  return undefined;
}

function afterFailedBatch(run: Run, batch: readonly Outgoing[], trouble: Trouble): Ended {
  if (!trouble.isSizeSuspected) return trouble;
  if (batch.length > 1) {
    pacing.smaller(run.pace, batch.length);
    return trouble.isServerThere ? undefined : trouble;
  }
  const [entry] = batch as [Outgoing];
  run.failedAlone.set(entry, trouble);
  const isSecondInARow = run.trouble !== undefined;
  run.trouble = trouble;
  return trouble.isServerThere && !isSecondInARow ? undefined : trouble;
}

/**
 * Whose fault was it? An entry's own, when the server answered badly to it alone and well to others in the same run,
 * or badly to it as the only one and well to reading. No answer at all is never counted against an entry; it only
 * lets others go first, and not even that while there is no network: letters keep their order then.
 */
async function judgeFailures({ failedAlone, hasDelivered, pace, store, clock }: Run, canRead: boolean): Promise<void> {
  const isProven = hasDelivered || (canRead && failedAlone.size === 1);
  for (const [{ number, tries }, { code, isServerThere }] of failedAlone) {
    if (code !== "no_network" || canRead || hasDelivered) pace.goLast.add(number);
    if (!isProven || !isServerThere) continue;
    await store.countTry(number, tries + 1);
    pacing.rest(pace, number, clock(), tries + 1);
  }
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
