/**
 * The only place that fetches: one request, at most 30 s, one plain reply. It never throws and judges nothing;
 * what a reply means is for `replies.ts`.
 */
import type { Reply } from "./replies.ts";

const LONGEST_MS = 30_000;
/** Below this gzip gains nothing. */
const SMALLEST_GZIP_BYTES = 1000;

/** The routes this room uses. `practice` is an id. */
export interface Network {
  push(practice: string, bundle: Uint8Array<ArrayBuffer>): Promise<Reply>;
  pull(practice: string, epoch: string, position: number): Promise<Reply>;
  me(): Promise<Reply>;
  signIn(login: string, password: string, device: string | undefined): Promise<Reply>;
  signOut(): Promise<Reply>;
}

export function network(fetchOnce: typeof fetch = (...given) => fetch(...given), longestMs = LONGEST_MS): Network {
  const ask = (path: string, init: RequestInit = {}) => replyOf(fetchOnce, `/api/1/${path}`, init, longestMs);
  return {
    push: async (practice, bundle) => ask(`practices/${practice}/push`, await bundleRequest(bundle)),
    pull: (practice, epoch, position) =>
      ask(`practices/${practice}/pull?${new URLSearchParams({ epoch, position: String(position) })}`),
    me: () => ask("me"),
    signIn: (login, password, device) =>
      ask("sign-in", jsonRequest({ login, password, ...(device === undefined ? {} : { device }) })),
    signOut: () => ask("sign-out", { method: "POST" }),
  };
}

async function replyOf(fetchOnce: typeof fetch, path: string, init: RequestInit, longestMs: number): Promise<Reply> {
  const limit = new AbortController();
  const timer = setTimeout(() => limit.abort(), longestMs);
  try {
    const response = await fetchOnce(path, {
      ...init,
      headers: { "X-Quietcuff": "1", ...init.headers },
      credentials: "same-origin",
      cache: "no-store",
      redirect: "manual", // a captive portal's redirect must not become an answer
      signal: limit.signal,
    });
    return await readReply(response);
  } catch {
    return { failed: limit.signal.aborted ? "timed_out" : "no_network" };
  } finally {
    clearTimeout(timer);
  }
}

async function readReply(response: Response): Promise<Reply> {
  const waitMs = retryAfterMs(response.headers.get("Retry-After"));
  return {
    status: response.status,
    type: (response.headers.get("Content-Type") ?? "").split(";")[0]?.trim().toLowerCase() ?? "",
    ...(waitMs === undefined ? {} : { retryAfterMs: waitMs }),
    body: new Uint8Array(await response.arrayBuffer()),
  };
}

/** Seconds, or a date as HTTP writes it; anything else is no word at all. */
export function retryAfterMs(text: string | null, nowMs = Date.now()): number | undefined {
  if (text === null) return undefined;
  const ms = /^\d+$/.test(text.trim()) ? Number(text) * 1000 : Date.parse(text) - nowMs;
  return Number.isFinite(ms) ? Math.max(0, ms) : undefined;
}

function jsonRequest(document: object): RequestInit {
  return { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(document) };
}

async function bundleRequest(bundle: Uint8Array<ArrayBuffer>): Promise<RequestInit> {
  const type = { "Content-Type": "application/x-ndjson" };
  if (bundle.length < SMALLEST_GZIP_BYTES || typeof CompressionStream === "undefined") {
    return { method: "POST", headers: type, body: bundle };
  }
  return { method: "POST", headers: { ...type, "Content-Encoding": "gzip" }, body: await gzip(bundle) };
}

/** Into one buffer, not a streamed body: streams need HTTP/2 and cannot be sent twice. */
async function gzip(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  return new Response(new Blob([bytes]).stream().pipeThrough(new CompressionStream("gzip"))).arrayBuffer();
}
