/*
 * A bag being changed: what is typed, put in, taken out and taken back, and that what is saved is a document the wire takes.
 */
import { describe, expect, it } from "vitest";
import { check } from "../../../../client/src/contract/wire.ts";
import { afterFailed, begun, editProblems, itemBegun, itemPut, itemWith, listOf, takenBack, takenOut, validatedOf, widthsAdded, wordingOf, type Edit } from "../../../../client/src/screens/bag/bag_edit.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

const typed = (widths: string, edit: Edit = begun(undefined, "Van", "")): Edit => widthsAdded({ ...edit, widths });
const widths = (edit: Edit): number[] => listOf(edit.body, "cuffs").map(({ width_mm }) => width_mm);
const fields = (edit: Edit): string[] => editProblems(edit).map(({ field }) => field);

describe("cuffs", () => {
  it("are typed quickly, kept in order, and two of a width stay two", () => {
    const edit = typed("40; 25", typed("30, 20 25"));
    expect(widths(edit)).toEqual([20, 25, 25, 30, 40]);
    expect([edit.widths, edit.dirty]).toEqual(["", true]);
  });

  it("are taken out by a tap and come back by undo", () => {
    const edit = takenOut(typed("20, 25, 30"), "cuffs", 1, "25 mm");
    expect(widths(edit)).toEqual([20, 30]);
    expect(edit.acts[edit.acts.length - 1]).toMatchObject({ word: "bag-act-out", facts: { what: "25 mm" } });
    expect(widths(undone(edit)[0])).toEqual([20, 25, 30]);
    const bare = takenOut(typed("20"), "cuffs", 0, "20 mm");
    expect([bare.body, widths(undone(bare)[0])]).toEqual([{ name: "Van" }, [20]]);
  });

  it("that cannot be read stay typed and keep the bag from being saved", () => {
    const edit = typed("20, twenty");
    expect([edit.widths, widths(edit), fields(edit)]).toEqual(["20, twenty", [], ["bag-widths"]]);
  });

  it("are 30 at most", () => {
    const many = Array.from({ length: 30 }, (_none, at) => String(at + 1)).join(",");
    expect(widths(typed(many))).toHaveLength(30);
    const more = typed("99", typed(many));
    expect([widths(more).length, more.widths, fields(more)]).toEqual([30, "99", ["bag-widths"]]);
  });

  it("keep their mark", () => {
    const edit = itemPut(itemWith(itemBegun(typed("20, 30"), "cuffs", 1), { mark: " blue " }), "30 mm");
    expect(edit.body.cuffs).toEqual([{ width_mm: 20 }, { width_mm: 30, mark: "blue" }]);
  });
});

describe("an earlier build's widths", () => {
  it("become the first bag; what could not be read stays to be mended", () => {
    const edit = begun(undefined, "First bag", "20, 25, x");
    expect([widths(edit), edit.widths, edit.dirty]).toEqual([[20, 25], "x", true]);
    expect(begun(undefined, "", "").dirty).toBe(false);
  });
});

describe("things", () => {
  const machine = (part: Parameters<typeof itemWith>[1]): Edit => itemPut(itemWith(itemBegun(begun(undefined, "Van", ""), "machines"), part), "x");

  it.each([["unknown", undefined], ["dog", ["dog"]], ["cat", ["cat"]], ["both", ["dog", "cat"]], ["none", []]] as const)("validated %s is written as %j and read back", (validated, species) => {
    const one = machine({ name: "Box 2", validated, by: "a paper", day: 20_782 }).body.machines?.[0];
    expect(one).toEqual({ name: "Box 2", ...(species ? { validated_in: species } : {}), validated_by: "a paper", checked_on_day: 20_782 });
    expect(one && validatedOf(one)).toBe(validated);
  });

  it("need a name; until then they stay open", () => {
    const edit = machine({ name: "  " });
    expect([edit.item?.kind, edit.body.machines, fields(edit)]).toEqual(["machines", undefined, ["bag-thing-name"]]);
    expect(fields(machine({ name: "n".repeat(61) }))).toEqual(["bag-thing-name"]);
  });

  it("change in place", () => {
    const edit = itemPut(itemWith(itemBegun(machine({ name: "Box 2", validated: "dog" }), "machines", 0), { validated: "both" }), "Box 2");
    expect(edit.body.machines).toEqual([{ name: "Box 2", validated_in: ["dog", "cat"] }]);
  });
});

describe("an item that is open", () => {
  const gauge = (edit: Edit, name: string): Edit => itemPut(itemWith(itemBegun(edit, "gauges"), { name }), name);
  const two = (): Edit => gauge(gauge(begun(undefined, "Van", ""), "A"), "B");
  const names = (edit: Edit): string[] => listOf(edit.body, "gauges").map(({ name }) => name);

  it("lets nothing be taken back until it is closed, so that it is put where it was", () => {
    const open = itemWith(itemBegun(takenOut(two(), "gauges", 0, "A"), "gauges", 0), { name: "B2" });
    expect(takenBack(open)).toBe(open);
    expect(names(takenBack(takenBack(itemPut(takenBack(open), "B2"))))).toEqual(["A", "B"]);
  });

  it("stays open with what is typed while another row is taken out or widths are added, and goes with its own row", () => {
    const open = itemWith(itemBegun(two(), "gauges", 1), { name: "B2" });
    const alone = takenOut(open, "gauges", 0, "A");
    expect([alone.item?.name, alone.item?.at]).toEqual(["B2", 0]);
    expect(names(itemPut(alone, "B2"))).toEqual(["B2"]);
    expect(takenOut(open, "gauges", 1, "B").item).toBeUndefined();
    expect(typed("20", open).item).toEqual(open.item);
    const marked = typed("20, 25", itemWith(itemBegun(typed("30"), "cuffs", 0), { mark: "blue" }));
    expect(itemPut(marked, "30 mm").body.cuffs).toEqual([{ width_mm: 20 }, { width_mm: 25 }, { width_mm: 30, mark: "blue" }]);
  });

  it("is put into the bag before another is begun, or stays on its problem; untyped it just closes", () => {
    const next = itemBegun(itemWith(itemBegun(two(), "gauges"), { name: "C" }), "gauges", 0, "C");
    expect([names(next), next.item?.name, next.acts[next.acts.length - 1]?.facts]).toEqual([["A", "B", "C"], "A", { what: "C" }]);
    const nameless = itemBegun(itemWith(itemBegun(two(), "gauges"), { by: "a paper" }), "machines");
    expect([nameless.item?.kind, nameless.item?.by, fields(nameless)]).toEqual(["gauges", "a paper", ["bag-thing-name"]]);
    const untyped = itemBegun(itemBegun(two(), "gauges"), "machines");
    expect([untyped.item?.kind, names(untyped), untyped.tried]).toEqual(["machines", ["A", "B"], undefined]);
    const same = itemWith(itemBegun(two(), "gauges", 1), { name: "B2" });
    expect(itemBegun(same, "gauges", 1)).toBe(same);
  });
});

describe("a save that failed", () => {
  it("gives a new bag another id where a letter has its own already, and changes nothing else", () => {
    const edit: Edit = { ...typed("20"), as: "one" };
    expect(afterFailed(edit, { code: "already_filed" }, () => "two")).toEqual({ ...edit, as: "two" });
    expect(afterFailed(edit, { code: "full" }, () => "two")).toBe(edit);
    const amending = { ...edit, id: "first" };
    expect(afterFailed(amending, { code: "already_filed" }, () => "two")).toBe(amending);
  });
});

describe("what is saved", () => {
  it("holds what is typed and not added yet, and is what the wire takes", () => {
    let edit = typed("20, 30", { ...begun(undefined, "", ""), name: " Van " });
    edit = itemWith(itemBegun({ ...edit, widths: "25 mm" }, "gauges"), { name: "Round one", type: "digital" });
    const body = wordingOf(edit, "Round one");
    expect(body).toEqual({ name: "Van", cuffs: [{ width_mm: 20 }, { width_mm: 25 }, { width_mm: 30 }], gauges: [{ name: "Round one", type: "digital" }] });
    expect(check("bag.1", body)).toBeUndefined();
  });

  it("needs a name of 60 characters or fewer", () => {
    expect(fields(begun(undefined, " ", ""))).toEqual(["bag-name"]);
    expect(fields(begun(undefined, "n".repeat(61), ""))).toEqual(["bag-name"]);
    expect(fields(begun(undefined, "n".repeat(60), ""))).toEqual([]);
  });
});
