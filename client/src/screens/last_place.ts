/* An app killed by the phone is started anew at its front door: this brings it back to the visit that was on the screen.
   Which one that is lies in its draft (`at`), written by the same strict transactions as everything typed, so that a kill right after
   a tap finds it. Must not keep a place of its own on the disk. */
import { effect } from "@preact/signals";
import type { Draft, Phone } from "../offline/journal";
import type { Keeper } from "./measure/keeper";
import { draftOf, openOf, SAME_VISIT_MS, type Open } from "./measure/open";
import { go, route } from "./route";

let place: string | null = null;

/** The id of the measurement that is open, or was when the app was last ended; null when none was. */
export function openPlace(): string | null {
  return place;
}

/** The draft that was on the screen last; null when the round was, or when it is so long ago that the list is the better start. */
export function placeOf(drafts: readonly Draft[], now_ms: number): string | null {
  const open = drafts.filter((draft) => openOf(draft).at === "open" && now_ms - draft.updatedMs < SAME_VISIT_MS);
  const [latest] = open.sort((one, other) => other.updatedMs - one.updatedMs);
  return latest?.id ?? null;
}

/** At a start: which measurement was open; without an address of its own also back to it. On Help it is under Help still. */
export async function backToPlace(phone: Keeps, now_ms: number): Promise<void> {
  const id = (place = placeOf(await phone.drafts(), now_ms));
  if (!id) return;
  if (location.hash.length <= 2) go(`#/measure/${id}`, true);
  else if (isInVisit()) covered = { id, end: () => endUnopened(id, phone) };
}

function opened(open: Open): Open {
  return open.at === "open" ? open : { ...open, at: "open" };
}

function left(open: Open): Open {
  const { at: _at, ...rest } = open;
  return rest;
}

/** Help is read in the middle of a visit, which is where the way back leads. */
const isInVisit = (): boolean => route.peek().at === "help";

type Keeps = Pick<Phone, "drafts" | "keepDraft">;

/** Visits that were left, their last write on its way to the disk; with the keeper of what could not be written. */
const leaving = new Map<string, Promise<Keeper<Open> | undefined>>();

/**
 * Resolves when nothing of this visit is on its way to the disk from a screen that was left: until then its draft is not the newest.
 * What was typed and could not be written is still in the keeper that comes with it; undefined where all was.
 */
export async function hasLeft(id: string): Promise<Keeper<Open> | undefined> {
  return leaving.get(id);
}

/**
 * What lies on the disk is written again without its place, so that a late write takes nothing from another window; what could not
 * be written yet goes along.
 */
async function leave(id: string, keeper: Keeper<Open> | undefined, phone: Keeps): Promise<void> {
  const head = keeper && keeper.head() !== keeper.shown.peek() ? keeper.head() : undefined;
  const draft = (await phone.drafts()).find((one) => one.id === id);
  if (draft) await phone.keepDraft(draftOf(left(head ?? openOf(draft)), Date.now()), true);
}

/** The last write of a screen that goes, and after it `then`; one of them failing, what was typed stays with its keeper. */
function write(id: string, keeper: Keeper<Open>, then?: () => Promise<void>): void {
  const before = leaving.get(id);
  const over = Promise.all([before, keeper.retry()]).then(async () => {
    await then?.();
    return then || !keeper.unkept.peek() ? undefined : keeper;
  });
  leaving.set(id, over.catch(() => (keeper.unkept.peek() ? keeper : undefined)));
}

function end(id: string, keeper: Keeper<Open>, phone: Keeps): void {
  if (place === id) place = null;
  write(id, keeper, () => leave(id, keeper, phone));
}

/** As `end`, of a visit that was not opened since the start. */
function endUnopened(id: string, phone: Keeps): void {
  if (place === id) place = null;
  leaving.set(id, leave(id, undefined, phone).then(() => undefined, () => undefined));
}

/** The visit Help lies over, and how it ends should the way lead elsewhere. */
let covered: { id: string; end: () => void } | undefined;

effect(() => {
  const to = route.value;
  if (to.at === "help" || !covered) return;
  if (to.at !== "measure" || to.id !== covered.id) covered.end();
  covered = undefined;
});

/** The visit is on the screen from now on; what comes back ends that. A draft filed or deleted meanwhile is not written again. */
export function stayAt(id: string, keeper: Keeper<Open>, phone: Keeps): () => void {
  place = id;
  void keeper.act(opened);
  return () => {
    if (!isInVisit()) return end(id, keeper, phone);
    write(id, keeper);
    covered = { id, end: () => end(id, keeper, phone) };
  };
}
