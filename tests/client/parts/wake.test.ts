/*
 * The screen stays awake while somebody measures: on ports of our own, since no test may depend on a screen.
 */
import { beforeEach, describe, expect, it } from "vitest";
import { AWAKE_MS, wakeKeeper, type WakeKeeper, type WakePorts } from "../../../client/src/parts/wake.ts";

const settled = (): Promise<void> => new Promise((then) => setTimeout(then));

let asked = 0;
let released = 0;
let isSeen = true;
let refuses = false;
let onSeen = (): void => undefined;
let lost: (() => void)[] = [];
let timers: Map<number, { then: () => void; ms: number }>;
let keeper: WakeKeeper;

const ports: WakePorts = {
  async request() {
    asked += 1;
    if (refuses) throw new DOMException("no", "NotAllowedError");
    return {
      async release() {
        released += 1;
      },
      addEventListener: (_kind, then) => void lost.push(then),
    };
  },
  isSeen: () => isSeen,
  onSeen: (then) => {
    onSeen = then;
  },
  after(then, ms) {
    timers.set(timers.size + 1, { then, ms });
    return timers.size;
  },
  forget: (timer) => void timers.set(timer, { then: () => undefined, ms: 0 }),
};

beforeEach(() => {
  [asked, released, isSeen, refuses, lost, timers] = [0, 0, true, false, [], new Map()];
  keeper = wakeKeeper(ports);
});

describe("the wake lock", () => {
  it("is asked for at the first input alone, and let go five minutes after the last", async () => {
    keeper.keep();
    await settled();
    keeper.keep();
    await settled();
    expect([asked, keeper.state.value]).toEqual([1, "held"]);
    const last = [...timers.values()].at(-1);
    expect(last?.ms).toBe(AWAKE_MS);
    expect(AWAKE_MS).toBe(300_000);
    last?.then();
    expect(released).toBe(1);
  });

  it("is asked for again when the page is seen again, unless it was let go", async () => {
    keeper.keep();
    await settled();
    lost.forEach((then) => then());
    onSeen();
    await settled();
    expect(asked).toBe(2);
    keeper.letGo();
    onSeen();
    await settled();
    expect(asked).toBe(2);
  });

  it("is not asked for while the page is hidden", async () => {
    isSeen = false;
    keeper.keep();
    await settled();
    expect([asked, keeper.state.value]).toEqual([0, "not_asked"]);
  });

  it("is given back when it comes after somebody left", async () => {
    keeper.keep();
    keeper.letGo();
    await settled();
    expect(released).toBe(1);
  });

  it("may be refused: that is known, and nothing is thrown", async () => {
    refuses = true;
    keeper.keep();
    await settled();
    expect(keeper.state.value).toBe("refused");
    expect(() => keeper.letGo()).not.toThrow();
  });
});
