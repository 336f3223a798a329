/**
 * A phone's store in memory for the simulation: each call is all or nothing, as a transaction is, and may be the last
 * thing a killed window did. It keeps the invariants by itself only where the disk would.
 */
import type { Outgoing, PulledEntry } from "../../../client/src/offline/bundle.ts";
import type { Place } from "../../../client/src/offline/chain.ts";
import type { Answer } from "../../../client/src/offline/replies.ts";
import type { SyncStore } from "../../../client/src/offline/sync.ts";

export interface OwnEntry extends Outgoing {
  state: "waiting" | "stored" | "held" | "refused";
  position?: number;
  tries: number;
}

export class Killed extends Error {}

export class MemoryStore implements SyncStore {
  readonly entries: OwnEntry[] = [];
  /** Pulled letters by epoch and position. */
  readonly rows = new Map<string, string>();
  place: Place | undefined;
  epoch: string | undefined;

  /** @param mayDie throws Killed when the window dies at this point */
  constructor(readonly mayDie: () => void) {}

  async waiting(limit: { entries: number; bytes: number }, without: ReadonlySet<number>): Promise<Outgoing[]> {
    this.mayDie();
    const ready = this.entries.filter(({ state, number }) => state === "waiting" && !without.has(number));
    const fresh = ready.filter(({ tries }) => tries < 5);
    return fresh.length > 0 ? fresh.slice(0, limit.entries) : ready.slice(0, 1);
  }

  keepAnswers(answers: readonly { entry: Outgoing; answer: Answer }[]): Promise<void> {
    return this.#commit(() => {
      for (const { entry, answer } of answers) {
        const own = this.#own(entry.number);
        if (own.state !== "stored") Object.assign(own, { state: answer.state, position: answer.position });
      }
    });
  }

  countTry(number: number): Promise<void> {
    return this.#commit(() => void (this.#own(number).tries += 1));
  }

  async knownEpoch(): Promise<string | undefined> {
    this.mayDie();
    return this.epoch;
  }

  offerAgain(epoch: string): Promise<void> {
    return this.#commit(() => {
      const taken = this.entries.filter(({ state }) => state === "stored");
      for (const own of taken) Object.assign(own, { state: "waiting", position: undefined });
      this.epoch = epoch;
    });
  }

  async cursor(): Promise<Place | undefined> {
    this.mayDie();
    return this.place;
  }

  keepCursor(place: Place): Promise<void> {
    return this.#commit(() => void (this.place = place));
  }

  async keepPage(entries: readonly PulledEntry[], place: Place): Promise<void> {
    await this.#commit(() => {
      for (const { envelope } of entries) {
        const own = this.entries.find(({ sha }) => sha === envelope.sha);
        if (own === undefined || own.state === "stored") continue;
        Object.assign(own, { state: "stored", position: envelope.position });
      }
    });
    await this.#commit(() => {
      for (const { envelope, letter } of entries) {
        this.rows.set(`${place.epoch}/${envelope.position}`, new TextDecoder().decode(letter));
      }
      this.place = place;
    });
  }

  async keepContact(): Promise<void> {
    this.mayDie();
  }

  /** Letters of the epoch read now, from 1 on without a gap. */
  record(): string[] {
    const letters: string[] = [];
    for (;;) {
      const next = this.rows.get(`${this.place?.epoch}/${letters.length + 1}`);
      if (next === undefined) return letters;
      letters.push(next);
    }
  }

  async #commit(change: () => void): Promise<void> {
    this.mayDie();
    change();
    this.mayDie(); // committed, and nobody heard of it
  }

  #own(number: number): OwnEntry {
    return this.entries[number - 1] as OwnEntry;
  }
}
