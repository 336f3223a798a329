/* An app killed by the phone is started anew at its front door: this brings it back to the visit that was on the screen.
   Which one that is lies in its draft (`at`), written by the same strict transactions as everything typed, so that a kill right after
   a tap finds it. Must not keep a place of its own on the disk. */
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

/** At a start: which measurement was open; without an address of its own also back to it. */
export async function backToPlace(phone: Pick<Phone, "drafts">, now_ms: number): Promise<void> {
  place = placeOf(await phone.drafts(), now_ms);
  if (place && location.hash.length <= 2) go(`#/measure/${place}`, true);
}

function opened(open: Open): Open {
  return open.at === "open" ? open : { ...open, at: "open" };
}

function left(open: Open): Open {
  const { at: _at, ...rest } = open;
  return rest;
}

/** Help is read in the middle of a visit, which is where the way back leads. */
const isInVisit = (): boolean => route.value.at === "help";

/** Visits that were left, their last write on its way to the disk. */
const leaving = new Map<string, Promise<void>>();

/** Resolves when nothing of this visit is on its way to the disk from a screen that was left: until then its draft is not the newest. */
export async function hasLeft(id: string): Promise<void> {
  await leaving.get(id);
}

/**
 * What lies on the disk is written again without its place, so that a late write takes nothing from another window; what could not
 * be written yet goes along.
 */
async function leave(id: string, keeper: Keeper<Open>, phone: Pick<Phone, "drafts" | "keepDraft">): Promise<void> {
  await keeper.retry();
  const isKept = keeper.head() === keeper.shown.peek();
  const draft = (await phone.drafts()).find((one) => one.id === id);
  if (draft) await phone.keepDraft(draftOf(left(isKept ? openOf(draft) : keeper.head()), Date.now()), true);
}

/** The visit is on the screen from now on; what comes back ends that. A draft filed or deleted meanwhile is not written again. */
export function stayAt(id: string, keeper: Keeper<Open>, phone: Pick<Phone, "drafts" | "keepDraft">): () => void {
  place = id;
  void keeper.act(opened);
  return () => {
    if (isInVisit()) return;
    if (place === id) place = null;
    const over = Promise.all([leaving.get(id), leave(id, keeper, phone)]).then(() => undefined, () => undefined);
    leaving.set(id, over);
  };
}
