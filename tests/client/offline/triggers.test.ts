/** When a try begins: the window's own events and a timer; and one window at a time. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type Reason, alone, watchWindow } from "../../../client/src/offline/triggers.ts";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe("the window", () => {
  const page = Object.assign(new EventTarget(), { visibilityState: "visible" });
  const frame = new EventTarget();
  let reasons: Reason[] = [];

  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal("document", page);
    vi.stubGlobal("window", frame);
    page.visibilityState = "visible";
    reasons = [];
  });

  it("asks when it is looked at, when the network seems back, and every 30 s", () => {
    const stop = watchWindow((reason) => reasons.push(reason));
    page.dispatchEvent(new Event("visibilitychange"));
    frame.dispatchEvent(new Event("focus"));
    frame.dispatchEvent(new Event("online"));
    vi.advanceTimersByTime(60_000);
    expect(reasons).toEqual(["seen", "seen", "online", "timer", "timer"]);
    stop();
    frame.dispatchEvent(new Event("online"));
    vi.advanceTimersByTime(60_000);
    expect(reasons).toHaveLength(5);
  });

  it("does not ask by timer or by hiding while nobody looks", () => {
    const stop = watchWindow((reason) => reasons.push(reason));
    page.visibilityState = "hidden";
    page.dispatchEvent(new Event("visibilitychange"));
    vi.advanceTimersByTime(60_000);
    expect(reasons).toEqual([]);
    stop();
  });
});

describe("alone", () => {
  it("asks for the lock of the whole phone, and steps back when it is taken", async () => {
    const asked: unknown[] = [];
    let isFree = true;
    const request = async (name: string, how: object, call: (lock: object | null) => Promise<boolean>) => {
      asked.push([name, how]);
      return call(isFree ? {} : null);
    };
    vi.stubGlobal("navigator", { locks: { request } });
    const work = vi.fn(async () => {});
    expect(await alone(work)).toBe(true);
    isFree = false;
    expect(await alone(work)).toBe(false);
    expect(work).toHaveBeenCalledTimes(1);
    expect(asked[0]).toEqual(["quietcuff-sync", { ifAvailable: true }]);
  });

  it("works without locks too: handing in twice is harmless", async () => {
    vi.stubGlobal("navigator", {});
    const work = vi.fn(async () => {});
    expect(await alone(work)).toBe(true);
    expect(work).toHaveBeenCalledTimes(1);
  });
});
