/* Keeps the screen awake while somebody measures: asked at a tap, asked again when the page is seen again, let go five minutes after
   the last tap. A browser may refuse or not know it: then that is said, and nothing fails. Must not know of screens. */
import { signal, type Signal } from "@preact/signals";

/** After this long without an input the screen may sleep again, in ms. */
export const AWAKE_MS = 5 * 60_000;

export type Wake = "not_asked" | "held" | "refused";

interface Held {
  release(): Promise<unknown>;
  addEventListener(kind: "release", then: () => void): void;
}

/** What is needed of the browser; handed in, so that it can be tried without one. */
export interface WakePorts {
  request(): Promise<Held>;
  isSeen(): boolean;
  onSeen(then: () => void): void;
  after(then: () => void, ms: number): number;
  forget(timer: number): void;
}

export interface WakeKeeper {
  state: Signal<Wake>;
  /** An input: asks for the lock if it is not held, and begins the five minutes anew. */
  keep(): void;
  /** Leaving: the screen may sleep at once. */
  letGo(): void;
}

/** A keeper on these ports. None of what it does can throw. */
export function wakeKeeper(ports: WakePorts): WakeKeeper {
  const state = signal<Wake>("not_asked");
  let held: Held | undefined;
  let wanted = false;
  let asking = false;
  let timer: number | undefined;

  async function ask(): Promise<void> {
    if (held || asking || !wanted || !ports.isSeen()) return;
    asking = true;
    try {
      const got = await ports.request();
      if (wanted) hold(got);
      else await got.release();
    } catch {
      state.value = "refused";
    } finally {
      asking = false;
    }
  }

  function hold(got: Held): void {
    held = got;
    state.value = "held";
    got.addEventListener("release", () => {
      if (held === got) held = undefined;
    });
  }

  function letGo(): void {
    wanted = false;
    if (timer !== undefined) ports.forget(timer);
    const last = held;
    held = undefined;
    if (last) void last.release().catch(() => undefined);
  }

  ports.onSeen(() => void ask());
  return {
    state,
    keep() {
      wanted = true;
      if (timer !== undefined) ports.forget(timer);
      timer = ports.after(letGo, AWAKE_MS);
      void ask();
    },
    letGo,
  };
}

let one: WakeKeeper | undefined;

/** The screen of this window. */
export function theWake(): WakeKeeper {
  one ??= wakeKeeper({
    request: async () => navigator.wakeLock.request("screen"),
    isSeen: () => document.visibilityState === "visible",
    onSeen: (then) => document.addEventListener("visibilitychange", then),
    after: (then, ms) => setTimeout(then, ms) as unknown as number,
    forget: (timer) => clearTimeout(timer),
  });
  return one;
}
