/**
 * What an answer from the network means. Pure, and strict on purpose: only an answer that is whole, of the right form
 * and about the very entries sent is delivery. A hotel's page with 200 is none, nor is a cut answer, nor any 4xx.
 */
import { type Outgoing, type Page, readLine, readPage, splitLines } from "./bundle.ts";
import type { NetworkTrouble } from "./phone_types.ts";

/** What the network port hands over; it never throws. */
export type Reply =
  | { readonly failed: "no_network" | "timed_out" }
  | {
      readonly status: number;
      /** Media type without parameters, lower case. */
      readonly type: string;
      readonly retryAfterMs?: number;
      readonly body: Uint8Array<ArrayBuffer>;
    };

/** An answer that is no delivery. */
export interface Trouble {
  readonly code: NetworkTrouble | "sign_in" | "cursor_void";
  /** Fewer entries may get through. */
  readonly isSizeSuspected: boolean;
  /** The server answered for these entries, so trying fewer at once is no knocking on a closed door. */
  readonly isServerThere: boolean;
  readonly waitMs: number;
}

/** The server's word on one entry. */
export interface Answer {
  readonly state: "stored" | "held" | "refused";
  readonly position?: number;
  readonly code?: string;
  readonly path?: string;
  readonly assessment?: object;
}

export interface Answers {
  readonly epoch: string;
  readonly serverTimeMs: number;
  readonly answers: readonly Answer[];
}

const NDJSON = "application/x-ndjson";
const PROBLEM = "application/problem+json";

/** Answers in the order of `sent`, or why there are none. */
export function readAnswers(reply: Reply, sent: readonly Outgoing[]): Answers | Trouble {
  const body = bodyOf(reply);
  if (!(body instanceof Uint8Array)) return body;
  const lines = splitLines(body);
  const header = readLine("answers.1", lines[0]);
  if (header === undefined || header["count"] !== sent.length) return trouble("not_understood", true);
  if (lines.length !== sent.length + 1) return trouble("not_understood", true);
  const answers: Answer[] = [];
  for (const [at, entry] of sent.entries()) {
    const answer = answerTo(entry, at + 1, readLine("answer.1", lines[at + 1]));
    if (answer === undefined) return trouble("not_understood", true);
    answers.push(answer);
  }
  return { epoch: header["epoch"] as string, serverTimeMs: header["server_time_ms"] as number, answers };
}

function answerTo(entry: Outgoing, line: number, said: Record<string, unknown> | undefined): Answer | undefined {
  if (said === undefined || said["line"] !== line) return undefined;
  if (said["id"] !== undefined && said["id"] !== entry.id) return undefined;
  const { answer, position, code, path, assessment } = said as Partial<Answer> & { answer: string };
  if (answer === "stored" || answer === "duplicate") {
    if (position === undefined) return undefined; // "in the record" without a place in it proves nothing
    return { state: "stored", position, ...(assessment === undefined ? {} : { assessment }) };
  }
  return { state: answer as "held" | "refused", code: code ?? answer, ...(path === undefined ? {} : { path }) };
}

/** A page whose form is right, or why there is none. */
export function readPulled(reply: Reply, practice: string): Page | Trouble {
  const body = bodyOf(reply);
  if (!(body instanceof Uint8Array)) return body;
  return readPage(body, practice) ?? trouble("not_understood");
}

/** The epoch in a signed_in.1 body, or why there is none. */
export function readEpoch(reply: Reply): { readonly epoch: string } | Trouble {
  if ("failed" in reply || reply.status !== 200) return troubleOf(reply);
  const said = reply.type === "application/json" ? readLine("signed_in.1", reply.body) : undefined;
  return said === undefined ? trouble("not_ours") : { epoch: said["epoch"] as string };
}

export function isTrouble(read: object): read is Trouble {
  return "isSizeSuspected" in read;
}

function bodyOf(reply: Reply): Uint8Array<ArrayBuffer> | Trouble {
  if ("failed" in reply || reply.status !== 200) return troubleOf(reply);
  return reply.type === NDJSON ? reply.body : trouble("not_ours", true);
}

function troubleOf(reply: Reply): Trouble {
  if ("failed" in reply) return trouble(reply.failed, true);
  const { status, type, retryAfterMs = 0 } = reply;
  if (status === 413) return trouble("server_trouble", true, true);
  if (status === 429 || status === 503) return trouble("busy", false, false, retryAfterMs);
  if (status >= 500) return trouble("server_trouble", true, true, retryAfterMs);
  if (type !== PROBLEM) return trouble("not_ours", true);
  return ourRefusal(status, codeOf(reply.body));
}

function ourRefusal(status: number, code: unknown): Trouble {
  if (status === 401) return trouble("sign_in");
  if (status === 409 && code === "cursor_void") return trouble("cursor_void");
  if (status === 415 || status === 426) return trouble("app_too_old");
  if ([403, 404, 410].includes(status)) return trouble("practice_closed");
  return trouble("server_trouble", true, true);
}

function codeOf(body: Uint8Array<ArrayBuffer>): unknown {
  return readLine("problem.1", body)?.["code"];
}

function trouble(code: Trouble["code"], isSizeSuspected = false, isServerThere = false, waitMs = 0): Trouble {
  return { code, isSizeSuspected, isServerThere, waitMs };
}
