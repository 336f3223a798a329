/* Registers the worker that keeps the shell, and decides when a newer one may take over: at a tap, or at a cold start
   without a draft. Never by itself under an open measurement, in no window. (With no window left at all the browser puts
   a waiting worker in place by itself, before a page is drawn: no thumb is on it, and the draft is read by the newer build.)
   The one policy for trusted addresses knows this one address and no other. */
import { update } from "./screens/phone/update";

const ADDRESS = "/sw.js";

interface Policies {
  createPolicy(
    name: string,
    rules: { createScriptURL(address: string): string },
  ): { createScriptURL(address: string): unknown };
}

function trusted(): string {
  const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;
  const rules = {
    createScriptURL(address: string): string {
      if (address !== ADDRESS) throw new TypeError("not the worker's address");
      return address;
    },
  };
  return (policies?.createPolicy("quietcuff-worker", rules).createScriptURL(ADDRESS) ?? ADDRESS) as string;
}

function watch(registration: ServiceWorkerRegistration, offer: (worker: ServiceWorker) => void): void {
  const follow = () => {
    const found = registration.installing;
    found?.addEventListener("statechange", () => {
      if (found.state === "installed" && navigator.serviceWorker.controller) offer(found);
    });
  };
  registration.addEventListener("updatefound", follow);
  follow(); // the page's own loading has asked for an update before this script ran: it may be under way already
}

/** Keeps the shell on this phone. `hasDrafts` is asked once, to know whether a waiting worker may take over now. */
export async function keepShell(hasDrafts: () => Promise<boolean>): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  const controlled = navigator.serviceWorker.controller !== null;
  let askedHere = false;
  const takeOver = (worker: ServiceWorker): void => {
    askedHere = true;
    worker.postMessage("take over");
  };
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (!controlled) return;
    // asked for in another window: this one has all its files, and may lie under a thumb just now
    if (askedHere) location.reload();
    else update.value = () => location.reload();
  });
  const registration = await navigator.serviceWorker.register(trusted(), { updateViaCache: "none" });
  const offer = (worker: ServiceWorker): void => {
    update.value = () => takeOver(worker);
  };
  watch(registration, offer);
  if (!registration.waiting || !controlled) return;
  if (await hasDrafts()) offer(registration.waiting);
  else takeOver(registration.waiting);
}
