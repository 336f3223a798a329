/**
 * When to try: at filing, at the start, when the screen is looked at, when the network seems back, every 30 s while
 * something waits, and at a press. The browser's word about the network is a hint: it starts a try, it never stops one.
 */

export type Reason = "filed" | "start" | "seen" | "online" | "timer" | "told" | "pressed";

const EVERY_MS = 30_000;

/** Listens to the window until the answer is called. */
export function watchWindow(onReason: (reason: Reason) => void): () => void {
  const seen = () => {
    if (document.visibilityState === "visible") onReason("seen");
  };
  const online = () => onReason("online");
  const timer = setInterval(() => {
    if (document.visibilityState === "visible") onReason("timer");
  }, EVERY_MS);
  document.addEventListener("visibilitychange", seen);
  window.addEventListener("focus", seen);
  window.addEventListener("online", online);
  return () => {
    clearInterval(timer);
    document.removeEventListener("visibilitychange", seen);
    window.removeEventListener("focus", seen);
    window.removeEventListener("online", online);
  };
}

/**
 * Runs `work` in one window at a time; false = another window is at it.
 * Without Web Locks it runs anyhow: handing in twice is harmless, it only costs bytes.
 */
export async function alone(work: () => Promise<void>): Promise<boolean> {
  if (navigator.locks === undefined) return work().then(() => true);
  return navigator.locks.request("quietcuff-sync", { ifAvailable: true }, async (lock) => {
    if (lock === null) return false;
    await work();
    return true;
  });
}
