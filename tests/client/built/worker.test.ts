/*
 * The built service worker, run in an empty global scope: which requests it answers, and when it takes over.
 * Expected behaviour: the Service Workers specification (a fetch nobody responds to goes to the network).
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { createContext, runInContext } from "node:vm";
import { beforeEach, describe, expect, test } from "vitest";

const ORIGIN = "http://localhost:8000";
const file = fileURLToPath(new URL("../../../client/dist/sw.js", import.meta.url));

type Listener = (event: Record<string, unknown>) => void;

let listeners: Map<string, Listener[]>;
let taken: string[];

/** Runs the worker anew, as a browser does when it installs it. */
function start(): void {
  listeners = new Map();
  taken = [];
  const scope: Record<string, unknown> = {
    addEventListener: (type: string, listener: Listener) =>
      listeners.set(type, [...(listeners.get(type) ?? []), listener]),
    skipWaiting: () => Promise.resolve(taken.push("skipWaiting")),
    clients: { claim: () => Promise.resolve(taken.push("claim")) },
    registration: { scope: `${ORIGIN}/` },
    location: new URL(`${ORIGIN}/sw.js`),
    caches: { match: () => Promise.resolve(new Response("kept")), open: () => Promise.reject(new Error("not asked")) },
    fetch: () => Promise.reject(new Error("no network")),
    URL,
    Request,
    Response,
    Headers,
    console,
  };
  scope.self = scope;
  runInContext(readFileSync(file, "utf8"), createContext(scope));
}

/** Does the worker answer this request itself? */
function answers(path: string, mode: "navigate" | "cors", method = "GET"): boolean {
  let answered = false;
  const request = { url: new URL(path, ORIGIN).href, mode, method, headers: new Headers() };
  const respondWith = (response: Promise<unknown>): void => {
    answered = true;
    void Promise.resolve(response).catch(() => undefined);
  };
  for (const listener of listeners.get("fetch") ?? []) listener({ request, respondWith, waitUntil: () => undefined });
  return answered;
}

beforeEach(start);

test("it is a classic script: it has no import or export, and runs", () => {
  expect(readFileSync(file, "utf8")).not.toMatch(/^\s*(import|export)\b/m);
  expect([...listeners.keys()].sort()).toEqual(["activate", "fetch", "install", "message"]);
});

describe("answers the shell and nothing else", () => {
  test.each([
    ["/", "navigate"],
    ["/index.html", "navigate"],
    ["/?from=icon", "navigate"],
    ["/#/patients", "navigate"],
    ["/index.html", "cors"],
    ["/manifest.webmanifest", "cors"],
  ] as const)("%s by %s", (path, mode) => expect(answers(path, mode)).toBe(true));

  test.each([
    ["/api/1/me", "cors"],
    ["/api/1/me", "navigate"],
    ["/api/1/practices/x/pull?epoch=e&position=0", "cors"],
    ["/api/1/api.json", "navigate"],
    ["/livez", "navigate"],
    ["/readyz", "cors"],
    ["/sw.js", "cors"],
    ["/patients", "navigate"],
    ["/index", "navigate"],
    ["/index.html/api", "navigate"],
    ["/api/../index.htm", "navigate"],
  ] as const)("not %s by %s", (path, mode) => expect(answers(path, mode)).toBe(false));

  test("and never a request that writes", () => {
    expect(answers("/", "navigate", "POST")).toBe(false);
    expect(answers("/api/1/practices/x/push", "cors", "POST")).toBe(false);
  });
});

describe("takes over when told to, never by itself", () => {
  const send = (data: unknown): void => {
    for (const listener of listeners.get("message") ?? []) listener({ data });
  };
  test("on the message", () => {
    send("take over");
    expect(taken).toEqual(["skipWaiting"]);
  });
  test("on no other message, and not while it is installed or activated", () => {
    for (const data of ["SKIP_WAITING", { type: "SKIP_WAITING" }, "", null]) send(data);
    for (const type of ["install", "activate"]) {
      for (const listener of listeners.get(type) ?? []) {
        listener({ waitUntil: (work: Promise<unknown>) => void work.catch(() => undefined) });
      }
    }
    expect(taken).toEqual([]);
  });
});
