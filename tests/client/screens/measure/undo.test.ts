/*
 * Undo as a person meets it: whatever was done, the latest act is taken back whole; twenty acts, no more; nothing changes in place.
 */
import { describe, expect, it } from "vitest";
import { ACTS_KEPT, done, patched, undone, type Act, type Patch } from "../../../../client/src/screens/measure/undo.ts";

interface Paper {
  acts: Act[];
  place?: string;
  list: number[];
}

const paper = (): Paper => ({ acts: [], list: [] });

/** A small generator of its own, so that a failing run can be repeated by its seed. */
function chanceFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return Math.floor((state / 2_147_483_648) * below);
  };
}

describe("the latest acts can be taken back", () => {
  it("gives back every state on the way, in reverse, after random acts", () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const chance = chanceFrom(seed);
      let now = paper();
      const before: Paper[] = [];
      for (let n = 0; n < ACTS_KEPT; n += 1) {
        before.push(structuredClone(now));
        const patches: Patch[] = [
          [{ at: ["list", now.list.length], to: chance(300) }],
          now.list.length > 0 ? [{ at: ["list", chance(now.list.length)], to: chance(300) }] : [],
          [{ at: ["place"], to: `place ${chance(3)}` }],
          [{ at: ["place"] }, { at: ["list", now.list.length], to: 1 }, { at: ["list", now.list.length + 1], to: 2 }],
        ][chance(4)] as Patch[];
        now = done(now, "act", {}, patches);
      }
      while (before.length > 0) {
        [now] = undone(now);
        expect({ ...now, acts: [] }, `seed ${seed}`).toEqual({ ...before.pop(), acts: [] });
      }
    }
  });

  it("keeps twenty and forgets the oldest; with none left nothing happens", () => {
    let now = paper();
    for (let n = 0; n < ACTS_KEPT + 3; n += 1) now = done(now, "act", {}, [{ at: ["list", n], to: n }]);
    for (let n = 0; n < ACTS_KEPT; n += 1) [now] = undone(now);
    expect(now.list).toEqual([0, 1, 2]);
    const [same, act] = undone(now);
    expect(act).toBeUndefined();
    expect(same).toBe(now);
  });

  it("survives being written down and read again, as a reload does", () => {
    const now = done({ ...paper(), place: "home" }, "act", { value: "142" }, [{ at: ["list", 0], to: 142 }, { at: ["place"] }]);
    const [back, act] = undone(JSON.parse(JSON.stringify(now)) as Paper);
    expect(back).toEqual({ acts: [], list: [], place: "home" });
    expect(act?.facts).toEqual({ value: "142" });
  });

  it("never changes the document it was given, and refuses a hole in a list", () => {
    const given = Object.freeze({ acts: [], list: Object.freeze([1, 2, 3]) as unknown as number[] });
    expect(patched(given, { at: ["list", 1], to: 9 })[0].list).toEqual([1, 9, 3]);
    expect(given.list).toEqual([1, 2, 3]);
    expect(() => patched(given, { at: ["list", 0] })).toThrow(RangeError);
  });
});
