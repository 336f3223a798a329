/* Where we are: hash routes, so that the browser's own back works and a cold start without network needs one document.
   Must not hold anything typed. */
import { signal } from "@preact/signals";

export type Route =
  | { at: "round" }
  | { at: "sign-in" }
  | { at: "outbox" | "bag" | "training" | "this-phone" }
  /** `id` names the topic, or nothing. */
  | { at: "help"; id: string }
  | { at: "patient"; id: string }
  | { at: "measure"; id: string }
  | { at: "nowhere" };

const ALONE = ["sign-in", "outbox", "bag", "training", "this-phone"] as const;

/** The route of a hash; an empty one is the round. `#/patients` is the round's address of the first build. */
export function routeOf(hash: string): Route {
  const [at, id] = hash.replace(/^#\/?/, "").split("/");
  if (!at || ((at === "round" || at === "patients") && !id)) return { at: "round" };
  const alone = ALONE.find((one) => one === at);
  if (alone && !id) return { at: alone };
  if (at === "help") return { at, id: decodeURIComponent(id ?? "") };
  if ((at === "patient" || at === "measure") && id) return { at, id: decodeURIComponent(id) };
  return { at: "nowhere" };
}

/** The route shown now. */
export const route = signal<Route>(routeOf(location.hash));

/** The page Help was opened over, and whether it is shown again by the way back. */
let under: { hash: string; isBack: boolean } | undefined;

/** The address of the page Help was opened over; undefined where it was opened over none, or is not open. */
export function underHelp(): string | undefined {
  return route.peek().at === "help" ? under?.hash : undefined;
}

/** Is this page shown again after a look into Help? Then it stands as it was left. */
export function isBackFromHelp(): boolean {
  return under?.isBack === true;
}

addEventListener("hashchange", ({ oldURL, newURL }) => {
  const [from, to] = [new URL(oldURL).hash, new URL(newURL).hash];
  const [wasHelp, isHelp] = [from, to].map((hash) => routeOf(hash).at === "help");
  if (isHelp && !wasHelp) under = { hash: from, isBack: false };
  else if (!isHelp) under = wasHelp && under?.hash === to ? { hash: to, isBack: true } : undefined;
  route.value = routeOf(location.hash);
  scrollTo(0, 0);
});

/** Go to a hash such as `#/outbox`. `replace` leaves no step behind in the browser's history. */
export function go(hash: string, replace = false): void {
  if (replace) {
    history.replaceState(null, "", hash);
    route.value = routeOf(hash);
    scrollTo(0, 0);
  } else location.hash = hash;
}
