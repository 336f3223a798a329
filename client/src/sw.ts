/*
 * Keeps the shell of the app on the phone, so that it starts without a network.
 * It must not touch the API or a record, imports nothing of ours, and never takes over by itself: a page with an open
 * measurement would find its files gone.
 */
import { cleanupOutdatedCaches, createHandlerBoundToURL, getCacheKeyForURL, precacheAndRoute } from "workbox-precaching";
import type { PrecacheEntry } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: readonly (string | PrecacheEntry)[] };

/** Navigations the shell answers, and no others: screens are told apart by the part after `#`, which is not sent. */
const SHELL_PATHS = [/^\/$/, /^\/\?/, /^\/index\.html(\?|$)/];

const LISTED = [...self.__WB_MANIFEST];

precacheAndRoute(LISTED, { cleanURLs: false, ignoreURLParametersMatching: [] });
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL("/index.html"), { allowlist: SHELL_PATHS }));

self.addEventListener("message", (event) => {
  if (event.data === "take over") void self.skipWaiting();
  // the page's self-test compares this list with what the cache really holds
  if (event.data === "which files") event.ports[0]?.postMessage(LISTED.map(nameInCache));
});

/** The whole address under which the cache keeps a listed file. */
function nameInCache(entry: string | PrecacheEntry): string {
  const address = typeof entry === "string" ? entry : entry.url;
  return new URL(getCacheKeyForURL(address) ?? address, self.location.origin).href;
}
