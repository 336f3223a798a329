/*
 * Keeps the shell of the app on the phone, so that it starts without a network.
 * It must not touch the API or a record, imports nothing of ours, and never takes over by itself: a page with an open
 * measurement would find its files gone.
 */
import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from "workbox-precaching";
import type { PrecacheEntry } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: readonly (string | PrecacheEntry)[] };

/** Navigations the shell answers, and no others: screens are told apart by the part after `#`, which is not sent. */
const SHELL_PATHS = [/^\/$/, /^\/\?/, /^\/index\.html(\?|$)/];

precacheAndRoute([...self.__WB_MANIFEST], { cleanURLs: false, ignoreURLParametersMatching: [] });
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL("/index.html"), { allowlist: SHELL_PATHS }));

self.addEventListener("message", (event) => {
  if (event.data === "take over") void self.skipWaiting();
});
