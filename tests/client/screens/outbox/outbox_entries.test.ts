/** The outbox names every entry, puts first what needs a person, and says why in a sentence. Invented entries. */
import { describe, expect, it } from "vitest";
import type { Letter, OutboxEntry, PatientCard } from "../../../../client/src/offline/phone_types.ts";
import { animalOf, inNeed, nameOf, reasonOf } from "../../../../client/src/screens/outbox/outbox_entries.ts";

function entry(number: number, kind: string, body: object, more: Partial<OutboxEntry> = {}, letterMore: object = {}): OutboxEntry {
  const around = { schema: 1, author: "a", basis: 0, made_at_ms: 0, zone: "Etc/UTC", offset_min: 0 };
  const letter = { id: `id${number}`, kind, ...around, ...letterMore, body } as Letter;
  return { number, id: letter.id, practice: "p", state: "waiting", tries: 0, letter, ...more };
}

const MO = entry(1, "patient", { species: "cat", name: "Mo" });
const CARDS = [{ id: "id1", letter: MO.letter as Letter, inRecord: false, amendments: 0, visits: 1 }] as PatientCard[];
const visit = (body: object, more: Partial<OutboxEntry> = {}): OutboxEntry => entry(2, "measurement", { patient: "id1", sets: [], ...body }, more);

describe("an entry of the outbox", () => {
  it.each([
    [MO, "Mo, added"],
    [entry(3, "patient", { species: "cat", name: "Moe" }, {}, { amends: "id1" }), "Moe, changed"],
    [entry(4, "bag", { name: "Van" }), "Bag Van, added"],
    [entry(5, "bag", { name: "Van" }, {}, { amends: "id4" }), "Bag Van, changed"],
    [visit({}), "Mo, measured"],
    [visit({ outcome: { kind: "not_today", why: "in_pain" } }), "Mo, visit without a full measurement"],
    [visit({ patient: "unknown" }), "An entry"],
    [entry(6, "plan", { name: "Later" }), "An entry"],
    [{ ...MO, letter: undefined } as unknown as OutboxEntry, "An entry this phone cannot open"],
  ])("%#: is named", (one, name) => expect(nameOf(one, CARDS)).toBe(name));

  it("leads to its animal, a change to the animal that it changes", () => {
    const change = entry(3, "patient", { species: "cat", name: "Moe" }, {}, { amends: "id1" });
    expect([MO, change, visit({}), entry(4, "bag", { name: "Van" })].map(animalOf)).toEqual(["id1", "id1", "id1", undefined]);
  });

  it("that needs a person comes first, then what is only here, each newest first", () => {
    const all = [
      entry(1, "patient", {}, { state: "stored" }), entry(2, "patient", {}), entry(3, "patient", {}, { state: "refused" }),
      entry(4, "patient", {}), entry(5, "patient", {}, { code: "unreadable" }), entry(6, "patient", {}, { state: "stored" }),
    ];
    expect(inNeed(all, false).map(({ number }) => number)).toEqual([5, 3, 4, 2, 6, 1]);
  });

  it("says why in a sentence, also for a code without words of its own", () => {
    expect(reasonOf({ code: "patient_missing" }, "refused")).toContain("No animal is named");
    expect(reasonOf({ code: "never_heard_of" }, "refused")).toContain("did not take this");
    expect(reasonOf({}, "waiting")).toContain("goes out by itself");
    expect([reasonOf({}, "stored"), reasonOf({}, "sending")]).toEqual([undefined, undefined]);
  });
});
