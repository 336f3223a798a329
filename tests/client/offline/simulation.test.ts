/**
 * Phones, a server and a network that fail at random, from a seed: nothing filed is lost, nothing is doubled, no cursor
 * outruns its rows, and when the faults end all agree. The history is judged by the test, not by the code's own word.
 */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { freshPace } from "../../../client/src/offline/pace.ts";
import { syncOnce } from "../../../client/src/offline/sync.ts";
import { DEVICE, FakeServer, type Fault, PRACTICE, captivePortal, ndjson, problem, sha256 } from "./fake_server.ts";
import { Killed, MemoryStore } from "./memory_store.ts";
import { newId, strangeLetter, CAT } from "./window.ts";

const SEEDS = 150;
const STEPS = 30;

/** A small generator (Lehmer, 1951), so that a failing seed can be run again. */
function chance(seed: number): () => number {
  let state = seed * 7919 + 1;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

class World {
  readonly server = new FakeServer();
  readonly random: () => number;
  nowMs = 1_000_000;
  isCalm = false;
  readonly phones = [this.#phone(), this.#phone()];
  filed: string[] = [];
  restores = 0;

  constructor(seed: number) {
    this.random = chance(seed);
    this.server.pageSize = 3;
    this.server.fault = (request) => (this.isCalm ? undefined : this.#fault(request));
  }

  /** One thing that happens: a filing, a run of one phone, rarely a restore of the server from an older copy. */
  async step(): Promise<void> {
    const { store, pace } = this.phones[Math.floor(this.random() * 2)] as (typeof this.phones)[0];
    const what = this.random();
    this.nowMs += Math.floor(this.random() * 90_000);
    if (what < 0.4) this.#file(store);
    else if (what < 0.96) await this.run(store, pace);
    else this.#restore();
    for (const phone of this.phones) checkAlways(phone.store);
  }

  async run(store: MemoryStore, pace = freshPace()): Promise<void> {
    const { server } = this;
    const network = {
      push: (bundle: Uint8Array<ArrayBuffer>) => server.push(PRACTICE, bundle),
      pull: (epoch: string, position: number) => server.pull(PRACTICE, epoch, position),
      me: () => server.me(),
    };
    const digest = async (bytes: Uint8Array) => new Uint8Array(createHash("sha256").update(bytes).digest());
    const ports = { store, network, clock: () => this.nowMs, random: this.random, sha256: digest };
    const mayRead = this.isCalm || this.random() < 0.9;
    await syncOnce(ports, { practice: PRACTICE, device: DEVICE, mayRead }, pace).catch((death: unknown) => {
      if (!(death instanceof Killed)) throw death;
      Object.assign(pace, freshPace()); // a new window knows nothing of the old one's pace
    });
  }

  #phone(): { store: MemoryStore; pace: ReturnType<typeof freshPace> } {
    const mayDie = () => {
      if (!this.isCalm && this.random() < 0.02) throw new Killed();
    };
    return { store: new MemoryStore(mayDie), pace: freshPace() };
  }

  #file(store: MemoryStore): void {
    const letter = strangeLetter("patient", { ...CAT, name: `cat ${this.filed.length}` });
    const { id } = JSON.parse(letter) as { id: string };
    const number = store.entries.length + 1;
    const sent = { number, id, sha: sha256(letter), letter: new TextEncoder().encode(letter) };
    store.entries.push({ ...sent, tries: 0, state: "waiting" });
    this.filed.push(letter);
  }

  #restore(): void {
    this.restores += 1;
    const head = Math.floor(this.random() * (this.server.journal.length + 1));
    this.server.restore(head, newId(this.nowMs + this.restores));
  }

  #fault: Fault = ({ route, count }) => {
    const what = this.random();
    if (what < 0.1) return { failed: "no_network" };
    if (what < 0.2) return "lose_answer";
    if (what < 0.25) return captivePortal();
    if (what < 0.3) return problem(500, "server_error");
    if (what < 0.33) return problem(503, "record_busy", 2000);
    if (what < 0.36) return problem(401, "sign_in");
    if (what < 0.4) return ndjson(["{"]);
    return route === "push" && count > 2 && what < 0.6 ? problem(413, "too_large") : undefined;
  };
}

/** True at every moment, also between a death and the next start. */
function checkAlways(store: MemoryStore): void {
  if (store.record().length < (store.place?.position ?? 0)) throw new Error("a cursor outran its rows");
  const isTorn = store.entries.some(({ state, position }) => (state === "stored") !== (position !== undefined));
  if (isTorn) throw new Error("stored without a position, or the other way round");
}

/** True once the faults ended and every phone had its turns. */
function checkAtTheEnd({ server, phones, filed }: World): void {
  const journal = server.journal.map(({ letter }) => letter);
  expect([...journal].sort(), "each filed letter on the server, once").toEqual([...filed].sort());
  for (const { store } of phones) {
    expect(store.record(), "the phone's copy of the record").toEqual(journal);
    expect(store.place).toMatchObject({ epoch: server.epoch, position: journal.length });
    for (const { state, position, letter } of store.entries) {
      expect(state).toBe("stored");
      expect(journal[(position as number) - 1]).toBe(new TextDecoder().decode(letter));
    }
  }
}

describe("with faults at every turn", () => {
  it(`${SEEDS} histories: nothing lost, nothing doubled, all agree in the end`, { timeout: 60_000 }, async () => {
    const seen = { filed: 0, restores: 0, requests: 0, retried: 0 };
    for (let seed = 1; seed <= SEEDS; seed += 1) {
      const world = new World(seed);
      for (let step = 0; step < STEPS; step += 1) await world.step();
      world.isCalm = true;
      for (let turn = 0; turn < 6; turn += 1) {
        world.nowMs += 3_600_000; // even what was set aside is due again
        for (const { store, pace } of world.phones) await world.run(store, pace);
      }
      try {
        checkAtTheEnd(world);
      } catch (failure) {
        throw new Error(`seed ${seed}`, { cause: failure });
      }
      seen.filed += world.filed.length;
      seen.restores += world.restores;
      seen.requests += world.server.requests.length;
      seen.retried += world.phones.flatMap(({ store }) => store.entries).filter(({ tries }) => tries > 0).length;
    }
    // The histories were not tame: else the checks above prove little.
    expect(seen.filed).toBeGreaterThan(SEEDS * 8);
    expect(seen.restores).toBeGreaterThan(SEEDS / 2);
    expect(seen.requests).toBeGreaterThan(SEEDS * 30);
    expect(seen.retried).toBeGreaterThan(0);
  });
});
