/*
 * Where an app that was killed starts again: read off the drafts themselves. The DOM's few globals the routes need are put in place
 * before the module is loaded.
 */
import { beforeAll, describe, expect, it, vi } from "vitest";
import type { Draft } from "../../../client/src/offline/phone_types.ts";
import { keeperOf } from "../../../client/src/screens/measure/keeper.ts";
import type { Open } from "../../../client/src/screens/measure/open.ts";
import { FakePhone, newId } from "../offline/window.ts";

const T0 = 1_700_000_000_000;
const HOUR_MS = 3_600_000;
const draft = (id: string, updatedMs: number, at?: "open"): Draft => ({ id, updatedMs, content: { id, part: "calm", ...(at ? { at } : {}) } }) as Draft;

describe("the place to come back to", () => {
  type Place = typeof import("../../../client/src/screens/last_place.ts");
  let [placeOf, backToPlace, stayAt, hasLeft] = [] as unknown as [Place["placeOf"], Place["backToPlace"], Place["stayAt"], Place["hasLeft"]];
  let route: typeof import("../../../client/src/screens/route.ts")["route"];
  beforeAll(async () => {
    vi.stubGlobal("location", { hash: "" });
    vi.stubGlobal("addEventListener", () => undefined);
    ({ placeOf, backToPlace, stayAt, hasLeft } = await import("../../../client/src/screens/last_place.ts"));
    ({ route } = await import("../../../client/src/screens/route.ts"));
  });

  it("is the draft that was on the screen, not the one written last", () => {
    expect(placeOf([draft("a", T0, "open"), draft("b", T0 + 1)], T0 + 2)).toBe("a");
    expect(placeOf([draft("a", T0), draft("b", T0)], T0)).toBeNull();
    expect(placeOf([], T0)).toBeNull();
  });

  it("is the newest of two", () => {
    expect(placeOf([draft("a", T0, "open"), draft("b", T0 + 1, "open")], T0 + 2)).toBe("b");
  });

  it("is left at once, and what comes back to the visit waits until that is on the disk", async () => {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    await phone.keepDraft({ id, updatedMs: 1, content: { id, part: "calm", at: "open", texts: {} } });
    const keeper = keeperOf<Open>((await phone.drafts())[0]?.content as Open, (open) => phone.keepDraft({ id, updatedMs: 2, content: open }), String);
    const leave = stayAt(id, keeper, phone);
    leave();
    await hasLeft(id);
    expect((await phone.drafts())[0]?.content).toEqual({ id, part: "calm", texts: {} });
  });

  it("takes nothing away that another window typed, and does not bring back a visit deleted while it was left", async () => {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    const kept = (note: string) => phone.keepDraft({ id, updatedMs: 1, content: { id, part: "calm", at: "open", texts: { note } } });
    await kept("one");
    const keeper = keeperOf<Open>((await phone.drafts())[0]?.content as Open, (open) => phone.keepDraft({ id, updatedMs: 2, content: open }), String);
    const leave = stayAt(id, keeper, phone);
    await kept("two, of another window");
    leave();
    await hasLeft(id);
    expect((await phone.drafts())[0]?.content).toEqual({ id, part: "calm", texts: { note: "two, of another window" } });
    const read = phone.drafts.bind(phone);
    phone.drafts = async () => {
      const drafts = await read();
      await phone.dropDraft(id); // between the reading and the late write
      return drafts;
    };
    stayAt(id, keeper, phone)();
    await hasLeft(id);
    expect(await read()).toEqual([]);
  });

  /** A visit on the screen, its notes on the disk, and how its writes go. */
  async function visit(writes: (open: Open, keep: () => Promise<void>) => Promise<void>) {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    await phone.keepDraft({ id, updatedMs: 1, content: { id, part: "calm", at: "open", texts: {} } });
    const write = (open: Open): Promise<void> => writes(open, () => phone.keepDraft({ id, updatedMs: 2, content: open }));
    const keeper = keeperOf<Open>((await phone.drafts())[0]?.content as Open, write, String);
    route.value = { at: "measure", id };
    const leave = stayAt(id, keeper, phone);
    const type = (note: string): Promise<void> => keeper.act((open) => ({ ...open, texts: { note } }));
    const kept = async () => (await phone.drafts())[0]?.content as Open;
    return { id, keeper, leave, type, kept };
  }

  const showHelp = (): void => {
    route.value = { at: "help", id: "calm" };
  };

  it("stays while Help is read, and the way back waits for a write on its way", async () => {
    let free: () => void = () => undefined;
    const slow = new Promise<void>((resolve) => {
      free = resolve;
    });
    const { id, leave, type, kept } = await visit((_open, keep) => slow.then(keep));
    void type("one");
    showHelp();
    leave();
    let isBack = false;
    const back = hasLeft(id).then((unkept) => {
      isBack = true;
      return unkept;
    });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(isBack).toBe(false);
    free();
    expect(await back).toBeUndefined();
    expect(await kept()).toEqual({ id, part: "calm", at: "open", texts: { note: "one" } });
  });

  it("is written over Help, too, with what could not be written before", async () => {
    let isFull = true;
    const { id, leave, type, kept } = await visit((_open, keep) => (isFull ? Promise.reject(new Error("full")) : keep()));
    await type("one");
    showHelp();
    isFull = false;
    leave();
    expect(await hasLeft(id)).toBeUndefined();
    expect((await kept()).texts).toEqual({ note: "one" });
  });

  it("brings back from Help what still cannot be written", async () => {
    const { id, keeper, leave, type } = await visit(() => Promise.reject(new Error("full")));
    await type("one");
    showHelp();
    leave();
    expect(await hasLeft(id)).toBe(keeper);
    expect(keeper.head().texts).toEqual({ note: "one" });
  });

  it("is left where the way leads on from Help to another page, and not where it leads back", async () => {
    const { id, leave, kept } = await visit((_open, keep) => keep());
    for (const to of [{ at: "measure", id }, { at: "this-phone" }] as const) {
      showHelp();
      leave();
      route.value = to;
      await hasLeft(id);
      expect((await kept()).at).toBe(to.at === "measure" ? "open" : undefined);
    }
  });

  it("is left, too, where the app was killed on Help and started there again", async () => {
    const { phone } = await new FakePhone().signedIn();
    const id = newId();
    for (const to of [{ at: "measure", id }, { at: "round" }] as const) {
      await phone.keepDraft({ id, updatedMs: T0, content: { id, part: "calm", at: "open", texts: {} } });
      vi.stubGlobal("location", { hash: "#/help/calm" });
      showHelp();
      await backToPlace(phone, T0 + 1);
      route.value = to;
      await hasLeft(id);
      expect(((await phone.drafts())[0]?.content as Open).at).toBe(to.at === "measure" ? "open" : undefined);
    }
  });

  it("is forgotten after four hours", () => {
    expect(placeOf([draft("a", T0, "open")], T0 + 4 * HOUR_MS - 1)).toBe("a");
    expect(placeOf([draft("a", T0, "open")], T0 + 4 * HOUR_MS)).toBeNull();
  });
});
