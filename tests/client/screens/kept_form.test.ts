/** A half-typed form over the real journal: found again, one a window, gone with its filing. The locks are a stand-in for the browser's. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { isBegun, isOrphan, type Form } from "../../../client/src/screens/forms_begun.ts";
import { chosenIn, letGoAfter, pressedSince, take } from "../../../client/src/screens/kept_form.ts";
import { CAT, FakePhone } from "../offline/window.ts";

/** Web Locks of one origin, only what is used of them: `ifAvailable`, held until the promise answered is over. */
function locks() {
  const held = new Set<string>();
  return {
    query: async () => ({ held: [...held].map((name) => ({ name })) }),
    request: async (name: string, _options: object, work: (lock: object | null) => unknown) => {
      if (held.has(name)) return work(null);
      held.add(name);
      try {
        return await work({ name });
      } finally {
        held.delete(name);
      }
    },
  };
}

beforeEach(() => vi.stubGlobal("navigator", { locks: locks() }));
afterEach(() => vi.unstubAllGlobals());

const FIRST = { texts: { name: "" }, chosen: {} };
const typed = (form: Form, name: string): Form => ({ ...form, texts: { ...form.texts, name } });

describe("a half-typed form", () => {
  it("is found again after the window that held it is gone, and no other form in its place", async () => {
    const { phone } = await new FakePhone().signedIn();
    const one = await take(phone, "new", FIRST);
    await phone.keepDraft({ id: one.id, updatedMs: 1, content: typed(one.form, "Qu") });
    one.letGo();
    await new Promise((resolve) => setTimeout(resolve));
    expect([await isBegun("new", phone), await isBegun("new/m1", phone)]).toEqual([true, false]);
    const again = await take(phone, "new", FIRST);
    expect([again.id, again.form.texts["name"]]).toEqual([one.id, "Qu"]);
  });

  it("of another window is neither offered nor written over", async () => {
    const { phone } = await new FakePhone().signedIn();
    const one = await take(phone, "new", FIRST);
    await phone.keepDraft({ id: one.id, updatedMs: 1, content: typed(one.form, "Quill") });
    expect(await isBegun("new", phone)).toBe(false);
    const two = await take(phone, "new", FIRST);
    expect(two.id).not.toBe(one.id);
    await phone.keepDraft({ id: two.id, updatedMs: 2, content: typed(two.form, "Moss") });
    expect((await phone.forms()).map(({ content }) => (content as Form).texts["name"])).toEqual(["Moss", "Quill"]);
  });

  it("is not offered again once its animal is filed, however soon the app was killed after", async () => {
    const { phone } = await new FakePhone().signedIn();
    const { id, form, letGo } = await take(phone, "new", FIRST);
    await phone.keepDraft({ id, updatedMs: 1, content: typed(form, "Bella") });
    expect((await phone.file({ kind: "patient", body: CAT }, id)).id).toBe(id);
    letGo(); // nothing else ran after the filing
    expect([await isBegun("new", phone), await phone.forms()]).toEqual([false, []]);
  });

  it("is let go after its last press is on the disk: whoever takes it then reads all of it", async () => {
    const { phone } = await new FakePhone().signedIn();
    const one = await take(phone, "new", FIRST);
    await phone.keepDraft({ id: one.id, updatedMs: 1, content: typed(one.form, "Q") });
    const late = new Promise((resolve) => setTimeout(resolve, 20)).then(() => phone.keepDraft({ id: one.id, updatedMs: 2, content: typed(one.form, "Quill") }));
    letGoAfter(late, one.letGo);
    const again = await take(phone, "new", FIRST);
    expect([again.id, again.form.texts["name"]]).toEqual([one.id, "Quill"]);
  });

  it("of what was pressed while one was filed begins from what was filed", () => {
    const filed: Form = { form: true, about: "handling/a", texts: { trick: "" }, chosen: { grade: "1" }, before: { texts: { trick: "" }, chosen: {} }, taken: ["trick"] };
    expect(pressedSince(filed, filed)).toBeUndefined();
    expect(pressedSince(filed, chosenIn(filed, "grade", "2"))).toEqual({
      form: true, about: "handling/a", texts: { trick: "" }, chosen: { grade: "2" }, before: { texts: { trick: "" }, chosen: { grade: "1" } },
    });
  });

  it("begun at the filing of a measurement that is gone has its own way back", () => {
    const draft = (id: string, content: object) => ({ id, updatedMs: 1, content });
    const form = draft("f", { form: true, about: "new/m1", texts: {}, chosen: {} });
    expect([isOrphan(form, [draft("m1", {})]), isOrphan(form, [draft("m2", {})])]).toEqual([false, true]);
    expect(isOrphan(draft("g", { form: true, about: "new", texts: {}, chosen: {} }), [])).toBe(false);
  });
});
