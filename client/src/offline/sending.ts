/**
 * Runs the loop of `sync.ts` when a trigger asks for it: one run at a time, never sooner than the pace allows.
 * A failed run changes what the status says and when it is tried again, and nothing else.
 */
import { type Pace, freshPace, hope, mustWait, nextTryMs, pressed } from "./pace.ts";
import type { Trying } from "./status.ts";
import type { Outcome } from "./sync.ts";
import type { Reason } from "./triggers.ts";
import { PhoneTrouble } from "./trouble.ts";

export interface SendingNeeds {
  readonly clock: () => number;
  /** One run; undefined when there is nobody to hand in for yet. */
  readonly run: (pace: Pace) => Promise<Outcome | undefined>;
  /** In one window at a time; false = another window is at it. */
  readonly alone: (work: () => Promise<void>) => Promise<boolean>;
  /** Calls back once after so many ms; the answer cancels. */
  readonly later: (delayMs: number, call: () => void) => () => void;
  readonly tell: (trying: Partial<Trying>) => void;
  /** The store gave up during a run. */
  readonly tellStorage: (trouble: PhoneTrouble) => void;
}

export interface Sending {
  /** Resolves when the run it led to has ended, or at once when it is too early. */
  ask(reason: Reason): Promise<void>;
  stop(): void;
}

export function sending(needs: SendingNeeds): Sending {
  const pace = freshPace();
  let running: Promise<void> | undefined;
  let asksAgain = false;
  let isStopped = false;
  let cancel = () => {};

  const runToEnd = async () => {
    do {
      asksAgain = false;
      await oneRun(needs, pace);
    } while (asksAgain && !isTooEarly(needs, pace));
    cancel();
    const dueMs = nextTryMs(pace) - needs.clock();
    if (dueMs > 0 && !isStopped) cancel = needs.later(dueMs, () => void ask("timer"));
  };
  const ask = (reason: Reason): Promise<void> => {
    if (isStopped) return Promise.resolve();
    if (reason === "pressed") pressed(pace);
    if (reason === "online" || reason === "seen") hope(pace);
    if (isTooEarly(needs, pace)) return Promise.resolve();
    if (running !== undefined) {
      asksAgain = true; // what was filed meanwhile must not wait for the next trigger
      return running;
    }
    running = runToEnd().finally(() => (running = undefined));
    return running;
  };
  const stop = () => {
    isStopped = true;
    cancel();
  };
  return { ask, stop };
}

function isTooEarly(needs: SendingNeeds, pace: Pace): boolean {
  return mustWait(pace, needs.clock());
}

async function oneRun(needs: SendingNeeds, pace: Pace): Promise<void> {
  try {
    await needs.alone(async () => {
      needs.tell({ sending: true });
      const outcome = await needs.run(pace);
      if (outcome !== undefined) tellOutcome(needs, outcome);
    });
  } catch (trouble) {
    if (!(trouble instanceof PhoneTrouble)) throw trouble; // a mistake of ours: let it be seen
    needs.tellStorage(trouble);
  } finally {
    needs.tell({ sending: false });
  }
}

function tellOutcome(needs: SendingNeeds, outcome: Outcome): void {
  const { network, nextTryMs: next, signInNeeded, signInToSend } = outcome;
  needs.tell({
    network,
    nextTryMs: next,
    ...(signInNeeded === undefined ? {} : { signInNeeded }),
    ...(signInToSend === undefined ? {} : { signInToSend }),
  });
}
