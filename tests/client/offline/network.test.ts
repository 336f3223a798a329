/** What goes over the line: routes, headers, gzip (RFC 1952, by Node's zlib), and when waiting for an answer ends. */
import { createServer, type IncomingMessage, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { gunzipSync } from "node:zlib";
import { afterEach, expect, it } from "vitest";
import { network, retryAfterMs } from "../../../client/src/offline/network.ts";
import { EPOCH, PRACTICE, bytes, text } from "./fake_server.ts";

interface Met {
  readonly request: IncomingMessage;
  readonly body: Buffer;
}

let server: Server | undefined;
afterEach(() => new Promise((resolve) => server?.close(resolve) ?? resolve(undefined)));

/** A real server on a free port of the loopback that keeps what it met, and the network that talks to it. */
async function listening(reply: { status: number; headers: Record<string, string>; body: string }, longestMs = 30_000) {
  const met: Met[] = [];
  server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on("data", (part: Buffer) => parts.push(part));
    request.on("end", () => {
      met.push({ request, body: Buffer.concat(parts) });
      response.writeHead(reply.status, reply.headers);
      if (reply.body === "never") response.flushHeaders();
      else response.end(reply.body);
    });
  });
  await new Promise<void>((resolve) => server?.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  const fetchOnce: typeof fetch = (path, init) => fetch(`http://127.0.0.1:${port}${String(path)}`, init);
  return { met, net: network(fetchOnce, longestMs) };
}

const OK = { status: 200, headers: { "Content-Type": "application/x-ndjson; charset=utf-8" }, body: "{}\n" };

it("hands in by POST with our header; gzip from 1 kB on, plain below", async () => {
  const { met, net } = await listening(OK);
  const [small, large] = [bytes("x".repeat(999)), bytes("y".repeat(1000))];
  expect(await net.push(PRACTICE, small)).toMatchObject({ status: 200, type: "application/x-ndjson" });
  await net.push(PRACTICE, large);
  const [first, second] = met as [Met, Met];
  expect(first.request).toMatchObject({ method: "POST", url: `/api/1/practices/${PRACTICE}/push` });
  expect(first.request.headers).toMatchObject({ "x-quietcuff": "1", "content-type": "application/x-ndjson" });
  expect([first.request.headers["content-encoding"], text(first.body)]).toEqual([undefined, text(small)]);
  expect(second.request.headers["content-encoding"]).toBe("gzip");
  expect(second.body.length).toBeLessThan(100);
  expect(text(gunzipSync(second.body))).toBe(text(large));
});

it("asks for a page by epoch and position, and for who is signed in", async () => {
  const { met, net } = await listening(OK);
  await net.pull(PRACTICE, EPOCH, 12);
  await net.me();
  expect(met.map(({ request }) => [request.method, request.url])).toEqual([
    ["GET", `/api/1/practices/${PRACTICE}/pull?epoch=${EPOCH}&position=12`],
    ["GET", "/api/1/me"],
  ]);
});

it("does not follow a redirect: what stands there is not our server", async () => {
  const headers = { Location: "/elsewhere", "Content-Type": "text/html" };
  const { met, net } = await listening({ status: 302, headers, body: "" });
  const reply = await net.me();
  expect("failed" in reply ? reply.failed : reply.status).not.toBe(200);
  expect(met).toHaveLength(1);
});

it("says `timed_out` when the answer does not end in time, also after its headers came", async () => {
  const { net } = await listening({ ...OK, body: "never" }, 60);
  expect(await net.me()).toEqual({ failed: "timed_out" });
});

it("says `no_network` when nobody answers", async () => {
  const refused: typeof fetch = () => Promise.reject(new TypeError("fetch failed"));
  expect(await network(refused).me()).toEqual({ failed: "no_network" });
});

it("reads Retry-After in seconds and as a date (RFC 9110, section 10.2.3)", () => {
  const nowMs = Date.parse("Wed, 21 Oct 2026 07:28:00 GMT");
  expect(retryAfterMs("120", nowMs)).toBe(120_000);
  expect(retryAfterMs("Wed, 21 Oct 2026 07:28:30 GMT", nowMs)).toBe(30_000);
  expect(retryAfterMs("Wed, 21 Oct 2026 07:00:00 GMT", nowMs)).toBe(0);
  expect(retryAfterMs("soon", nowMs)).toBeUndefined();
  expect(retryAfterMs(null, nowMs)).toBeUndefined();
});
