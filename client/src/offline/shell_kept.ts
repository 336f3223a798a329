/**
 * Is every file of the app on this phone, and would it start from them alone? Compares the browser's cache with the list the
 * worker holds. Looking fetches nothing; only `fetchMissing`, at a tap, puts back what has gone.
 */

/** What is asked of the browser. */
export interface ShellSeen {
  /** Addresses of all files the worker keeps, each as its cache names it; undefined when no worker answers. */
  listed(): Promise<readonly string[] | undefined>;
  /** What the cache holds under that address. */
  kept(address: string): Promise<Response | undefined>;
}

/** How many files belong to the app, and how many of them are not in the cache. */
export interface ShellCount {
  readonly files: number;
  readonly missing: number;
}

/** undefined when no worker answers: then nothing is known to be kept. */
export async function countKept({ listed, kept }: ShellSeen): Promise<ShellCount | undefined> {
  const addresses = await listed();
  if (addresses === undefined || addresses.length === 0) return undefined;
  const found = await Promise.all(addresses.map(async (address) => isWhole(await kept(address))));
  return { files: addresses.length, missing: found.filter((whole) => !whole).length };
}

function isWhole(kept: Response | undefined): boolean {
  return kept !== undefined && kept.ok;
}

const PAGE = "/index.html";
const NAMED = /(?:src|href)="(\/[^"]+)"/g;

/** Reads the page from the cache and looks for all it names: what a cold start without a network needs first. */
export async function startsAlone({ listed, kept }: ShellSeen): Promise<boolean> {
  const addresses = (await listed()) ?? [];
  const byPath = new Map(addresses.map((address) => [new URL(address).pathname, address]));
  const at = byPath.get(PAGE);
  const page = at === undefined ? undefined : await kept(at);
  if (page === undefined || !page.ok) return false;
  const named = [...(await page.text()).matchAll(NAMED)].map(([, path]) => byPath.get(path as string));
  const found = await Promise.all(named.map(async (address) => address !== undefined && isWhole(await kept(address))));
  return found.length > 0 && found.every(Boolean);
}

/**
 * Puts missing files back, which no worker does by itself. Only while the server still has the build of this phone: a newer
 * one brings all its files itself, and files of two builds must never lie together. Rejects without a network.
 */
export async function fetchMissing({ listed, kept }: ShellSeen): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration?.update();
  if (registration === undefined || registration.installing || registration.waiting) return;
  const name = (await caches.keys()).find((one) => one.startsWith("workbox-precache"));
  if (name === undefined) return;
  const cache = await caches.open(name);
  for (const address of (await listed()) ?? []) {
    if (!isWhole(await kept(address))) await cache.add(new Request(address, { cache: "reload" }));
  }
}

const ANSWER_WITHIN_MS = 3000;

/** The worker and the cache of this browser. */
export function browserShell(): ShellSeen {
  return { listed: askWorker, kept: (address) => caches.match(address) };
}

async function askWorker(): Promise<readonly string[] | undefined> {
  const worker = navigator.serviceWorker?.controller ?? (await navigator.serviceWorker?.getRegistration())?.active;
  if (!worker) return undefined;
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(undefined), ANSWER_WITHIN_MS);
    port1.onmessage = ({ data }: MessageEvent<readonly string[]>) => {
      clearTimeout(timer);
      port1.close();
      resolve(data);
    };
    worker.postMessage("which files", [port2]);
  });
}
