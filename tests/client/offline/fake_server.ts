/**
 * A server for the phone's tests, written against the wire documents and not against the client: its hashes and chain
 * are Node's own crypto. It can be told to fail in the ways networks and servers fail. It judges nothing by rules.
 */
import { createHash } from "node:crypto";
import type { Network } from "../../../client/src/offline/network.ts";
import type { Reply } from "../../../client/src/offline/replies.ts";

export const PRACTICE = "11111111-1111-4111-8111-111111111111";
export const PERSON = "22222222-2222-4222-8222-222222222222";
export const OTHER_PERSON = "33333333-3333-4333-8333-333333333333";
export const DEVICE = "44444444-4444-4444-8444-444444444444";
export const EPOCH = "55555555-5555-4555-8555-555555555555";
export const NEXT_EPOCH = "66666666-6666-4666-8666-666666666666";

export interface Stored {
  readonly device: string;
  readonly number: number;
  readonly sha: string;
  readonly chain: string;
  readonly letter: string;
  readonly assessment?: object;
}

/** What a request meets in place of the server, or `undefined` to let it through. */
export type Fault = (request: { route: string; count: number; ids: string[] }) => Reply | "lose_answer" | undefined;

export class FakeServer implements Network {
  epoch = EPOCH;
  journal: Stored[] = [];
  requests: { route: string; count: number; ids: string[] }[] = [];
  fault: Fault = () => undefined;
  judge: (letter: Record<string, unknown>) => object = () => ({ answer: "stored" });
  pageSize = 500;
  /** Changes a page's lines before they go out. */
  bend: (lines: string[]) => string[] = (lines) => lines;
  person = PERSON;
  serverTimeMs = 1_000_000;
  signedOut = 0;

  async push(practice: string, bundle: Uint8Array): Promise<Reply> {
    const lines = text(bundle).trimEnd().split("\n");
    const header = JSON.parse(lines[0] as string) as { practice: string; count: number };
    if (header.practice !== practice || lines.length !== 1 + 2 * header.count) throw new Error("a bundle out of form");
    const ids = lines.filter((_, at) => at > 0 && at % 2 === 0).map((line) => (JSON.parse(line) as { id: string }).id);
    return this.#meet({ route: "push", count: header.count, ids }, () => this.#receive(lines.slice(1)));
  }

  async pull(practice: string, epoch: string, position: number): Promise<Reply> {
    return this.#meet({ route: "pull", count: position, ids: [] }, () => {
      if (epoch !== this.epoch || position > this.journal.length) return problem(409, "cursor_void");
      const to = Math.min(this.journal.length, position + this.pageSize);
      const head = this.journal.length;
      const header = { bundle: 1, practice, epoch, view: "all", head, more: to < head };
      const first = JSON.stringify({ ...header, count: to - position, server_time_ms: this.serverTimeMs });
      const pairs = this.journal.slice(position, to).flatMap((row, at) => [
        JSON.stringify({
          ...{ device: row.device, number: row.number, sha: row.sha },
          ...{ position: position + at + 1, after: position + at },
          ...{ chain: row.chain, received_at_ms: this.serverTimeMs },
          ...(row.assessment === undefined ? {} : { assessment: row.assessment }),
        }),
        row.letter,
      ]);
      return ndjson(this.bend([first, ...pairs]));
    });
  }

  async me(): Promise<Reply> {
    return this.#meet({ route: "me", count: 0, ids: [] }, () => json(this.#signedIn()));
  }

  async signIn(_login: string, password: string): Promise<Reply> {
    return this.#meet({ route: "sign-in", count: 0, ids: [] }, () =>
      password === "right" ? json(this.#signedIn()) : problem(401, "wrong_login"),
    );
  }

  async signOut(): Promise<Reply> {
    return this.#meet({ route: "sign-out", count: 0, ids: [] }, () => {
      this.signedOut += 1;
      return { status: 204, type: "", body: new Uint8Array() };
    });
  }

  /** Another phone's letter, straight into the journal. */
  add(letter: string, number = 1, assessment?: object): Stored {
    const before = this.journal.at(-1)?.chain ?? "00".repeat(32);
    const sha = sha256(letter);
    const chain = createHash("sha256").update(Buffer.from(before + sha, "hex")).digest("hex");
    const row = { device: DEVICE, number, sha, chain, letter, ...(assessment === undefined ? {} : { assessment }) };
    this.journal.push(row);
    return row;
  }

  /** As after a restore from a copy: the journal is cut at `head` and counts under a new epoch. */
  restore(head: number, epoch = NEXT_EPOCH): void {
    this.journal = this.journal.slice(0, head);
    this.epoch = epoch;
  }

  /** The animals' names in the journal's order. */
  names(): string[] {
    return this.journal.map(({ letter }) => (JSON.parse(letter) as { body: { name: string } }).body.name);
  }

  pushes(): { count: number; ids: string[] }[] {
    return this.requests.filter(({ route }) => route === "push");
  }

  #meet(request: { route: string; count: number; ids: string[] }, work: () => Reply): Reply {
    this.requests.push(request);
    const met = this.fault(request);
    if (met === "lose_answer") {
      work();
      return { failed: "timed_out" };
    }
    return met ?? work();
  }

  #receive(lines: string[]): Reply {
    const answers: object[] = [];
    for (let at = 0; at < lines.length; at += 2) {
      answers.push(this.#file(at / 2 + 1, lines[at] as string, lines[at + 1] as string));
    }
    const { epoch, serverTimeMs } = this;
    const first = { answers: 1, count: answers.length, epoch, head: this.journal.length, server_time_ms: serverTimeMs };
    return ndjson([first, ...answers].map((one) => JSON.stringify(one)));
  }

  #file(line: number, envelopeLine: string, letter: string): object {
    const envelope = JSON.parse(envelopeLine) as { number: number; sha: string };
    if (sha256(letter) !== envelope.sha) throw new Error("the phone sent other bytes than it counted");
    const { id } = JSON.parse(letter) as { id: string };
    const known = this.journal.findIndex((row) => row.letter === letter);
    if (known !== -1) return { line, id, answer: "duplicate", position: known + 1 };
    const judged = this.judge(JSON.parse(letter) as Record<string, unknown>) as { answer: string; assessment?: object };
    if (judged.answer !== "stored") return { line, id, ...judged };
    this.add(letter, envelope.number, judged.assessment);
    return { line, id, ...judged, position: this.journal.length };
  }

  #signedIn(): object {
    return {
      ...{ practice: PRACTICE, practice_name: "Hill practice", person: this.person, person_name: "Ada North" },
      ...{ role: "nurse", device: DEVICE, epoch: this.epoch, server_time_ms: this.serverTimeMs },
    };
  }
}

export function sha256(letter: string): string {
  return createHash("sha256").update(letter, "utf8").digest("hex");
}

export function ndjson(lines: string[]): Reply & { body: Uint8Array<ArrayBuffer> } {
  return { status: 200, type: "application/x-ndjson", body: bytes(`${lines.join("\n")}\n`) };
}

export function json(document: object): Reply {
  return { status: 200, type: "application/json", body: bytes(JSON.stringify(document)) };
}

export function problem(status: number, code: string, retryAfterMs?: number): Reply {
  const body = bytes(JSON.stringify({ type: "about:blank", title: code, status, code }));
  return { status, type: "application/problem+json", body, ...(retryAfterMs === undefined ? {} : { retryAfterMs }) };
}

/** What a hotel's network answers to everything. */
export function captivePortal(): Reply {
  return { status: 200, type: "text/html", body: bytes("<!doctype html><title>Welcome</title>") };
}

export function bytes(from: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(from);
}

export function text(from: Uint8Array): string {
  return new TextDecoder().decode(from);
}
