/*
 * Where an app that was killed starts again: read off the drafts themselves. The DOM's few globals the routes need are put in place
 * before the module is loaded.
 */
import { beforeAll, describe, expect, it, vi } from "vitest";
import type { Draft } from "../../../client/src/offline/phone_types.ts";

const T0 = 1_700_000_000_000;
const HOUR_MS = 3_600_000;
const draft = (id: string, updatedMs: number, at?: "open"): Draft => ({ id, updatedMs, content: { id, part: "calm", ...(at ? { at } : {}) } }) as Draft;

describe("the place to come back to", () => {
  let placeOf: (drafts: readonly Draft[], now_ms: number) => string | null;
  beforeAll(async () => {
    vi.stubGlobal("location", { hash: "" });
    vi.stubGlobal("addEventListener", () => undefined);
    ({ placeOf } = await import("../../../client/src/screens/last_place.ts"));
  });

  it("is the draft that was on the screen, not the one written last", () => {
    expect(placeOf([draft("a", T0, "open"), draft("b", T0 + 1)], T0 + 2)).toBe("a");
    expect(placeOf([draft("a", T0), draft("b", T0)], T0)).toBeNull();
    expect(placeOf([], T0)).toBeNull();
  });

  it("is the newest of two", () => {
    expect(placeOf([draft("a", T0, "open"), draft("b", T0 + 1, "open")], T0 + 2)).toBe("b");
  });

  it("is forgotten after four hours", () => {
    expect(placeOf([draft("a", T0, "open")], T0 + 4 * HOUR_MS - 1)).toBe("a");
    expect(placeOf([draft("a", T0, "open")], T0 + 4 * HOUR_MS)).toBeNull();
  });
});
