/**
 * Everything of the browser this room leans on besides its databases and its cryptography, in one record, so that
 * tests can put a clock, a network or a second window in its place. It decides nothing.
 */
import { type Network, network } from "./network.ts";
import { type Reason, alone, watchWindow } from "./triggers.ts";

/** `rows`: something was written; `place`: somebody signed in or out. */
export type Word = "rows" | "place";

/** Tells the other windows of this phone; a window does not hear itself. */
export interface Channel {
  tell(word: Word): void;
  hear(listen: (word: Word) => void): void;
  close(): void;
}

export interface Around {
  /** ms UTC. */
  readonly clock: () => number;
  readonly random: () => number;
  readonly network: Network;
  readonly channel: Channel;
  readonly alone: (work: () => Promise<void>) => Promise<boolean>;
  readonly later: (delayMs: number, call: () => void) => () => void;
  readonly watch: (onReason: (reason: Reason) => void) => () => void;
  /** Asks the browser to keep this store; it may refuse. */
  readonly persist: () => Promise<boolean>;
}

export function browserAround(): Around {
  return {
    clock: () => Date.now(),
    random: () => Math.random(),
    network: network(),
    channel: broadcast(),
    alone,
    later,
    watch: watchWindow,
    persist: async () => (await navigator.storage?.persist?.()) ?? false,
  };
}

function later(delayMs: number, call: () => void): () => void {
  const timer = setTimeout(call, delayMs);
  return () => clearTimeout(timer);
}

/** Words only, never content: whoever hears one reads the store again. */
export function broadcast(): Channel {
  if (typeof BroadcastChannel === "undefined") return { tell: () => {}, hear: () => {}, close: () => {} };
  const channel = new BroadcastChannel("quietcuff");
  return {
    tell: (word) => channel.postMessage(word),
    hear: (listen) => (channel.onmessage = (event: MessageEvent) => listen(event.data as Word)),
    close: () => channel.close(),
  };
}
