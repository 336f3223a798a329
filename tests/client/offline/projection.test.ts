/** Patients and visits out of letters: amended, known twice, in any order, half in the record. Invented cases. */
import { describe, expect, it } from "vitest";
import type { Letter } from "../../../client/src/offline/journal.ts";
import { type Known, bagsOf, patientsOf, visitsOf } from "../../../client/src/offline/projection.ts";
import { CAT, FakePhone, measurement, quiet, strangeLetter } from "./window.ts";

function letter(id: string, kind: string, body: object, more: object = {}): Letter {
  const around = { schema: 1, author: "a", basis: 0, made_at_ms: 1000, zone: "Etc/UTC", offset_min: 0 };
  return { id, kind, ...around, ...more, body: body as Letter["body"] };
}

const pulled = (position: number, of: Letter): Known => ({ letter: of, inRecord: true, position });
const own = (number: number, of: Letter): Known => ({ letter: of, inRecord: false, number, state: "waiting" });

const KNOWN: Known[] = [
  pulled(1, letter("p", "patient", { species: "cat", name: "Bela" })),
  pulled(2, letter("m1", "measurement", measurement("p", 5000))),
  pulled(3, letter("p2", "patient", { species: "cat", name: "Bella" }, { amends: "p", reason: "spelling" })),
  pulled(4, letter("m2", "measurement", measurement("p", 9000))),
  pulled(5, letter("q", "patient", { species: "dog", name: "Rex" })),
  own(1, letter("m3", "measurement", { ...measurement("p", 5000), place: "home" }, { amends: "m1", reason: "place" })),
  own(2, letter("m4", "measurement", { ...measurement("p", 5000), place: "clinic" }, { amends: "m1" })),
];

describe("letters become", () => {
  it("patients in their latest wording, with visits counted once", () => {
    expect(patientsOf(KNOWN)).toMatchObject([
      { id: "p", letter: { body: { name: "Bella" } }, amendments: 1, visits: 2, lastVisitMs: 9000, inRecord: true },
      { id: "q", letter: { body: { name: "Rex" } }, amendments: 0, visits: 0 },
    ]);
  });

  it("visits, newest first, a second amendment on top of all earlier wordings", () => {
    const visits = visitsOf(KNOWN, "p");
    expect(visits.map(({ id, inRecord }) => [id, inRecord])).toEqual([["m2", true], ["m1", false]]);
    expect(visits[1]).toMatchObject({ letter: { id: "m4" }, state: "waiting", earlier: [{ id: "m1" }, { id: "m3" }] });
    expect(visitsOf(KNOWN, "nobody")).toEqual([]);
  });

  it("the same in every order they may come in", () => {
    const [patients, visits] = [patientsOf(KNOWN), visitsOf(KNOWN, "p")];
    let state = 7; // a small generator, so that a failure can be repeated
    for (let round = 0; round < 200; round += 1) {
      const mixed = [...KNOWN]
        .map((one) => ({ one, key: (state = (state * 48271) % 2147483647) }))
        .sort((a, b) => a.key - b.key)
        .map(({ one }) => one);
      expect(patientsOf(mixed)).toEqual(patients);
      expect(visitsOf(mixed, "p")).toEqual(visits);
    }
  });

  it("the amendment, also where its original arrived later, as on the server", () => {
    const known: Known[] = [
      pulled(1, letter("p2", "patient", { species: "cat", name: "Bella" }, { amends: "p", reason: "spelling" })),
      pulled(2, letter("m2", "measurement", { ...measurement("p"), place: "home" }, { amends: "m", reason: "place" })),
      pulled(3, letter("p", "patient", { species: "cat", name: "Bela" })),
      pulled(4, letter("m", "measurement", measurement("p"))),
    ];
    for (const mixed of [known, [...known].reverse()]) {
      expect(patientsOf(mixed)).toMatchObject([{ id: "p", letter: { body: { name: "Bella" } }, amendments: 1 }]);
      expect(visitsOf(mixed, "p")).toMatchObject([{ id: "m", position: 2, letter: { id: "m2" }, earlier: [{ id: "m" }] }]);
    }
  });

  it("one thing when known twice, and what the record says counts", () => {
    const mine = letter("m", "measurement", measurement("p"));
    const twice: Known[] = [own(1, mine), { ...pulled(3, mine), serverAssessment: { verdict: "scattered" } }];
    for (const known of [twice, [...twice].reverse()]) {
      const standing = { inRecord: true, position: 3, serverAssessment: { verdict: "scattered" } };
      expect(visitsOf(known, "p")).toMatchObject([standing]);
    }
  });

  it("bags in their latest wording, by name, and nothing but bags", () => {
    const van = { name: "van", cuffs: [{ width_mm: 25 }] };
    const known: Known[] = [
      ...KNOWN,
      pulled(6, letter("b1", "bag", van)),
      pulled(7, letter("b2", "bag", { name: "Attic" })),
      own(3, letter("b3", "bag", { ...van, cuffs: [] }, { amends: "b1", reason: "lost" })),
    ];
    for (const mixed of [known, [...known].reverse()]) {
      expect(bagsOf(mixed)).toEqual([
        { id: "b2", letter: letter("b2", "bag", { name: "Attic" }), inRecord: true },
        { id: "b1", letter: known[9]?.letter, inRecord: false },
      ]);
      expect(patientsOf(mixed)).toHaveLength(2);
    }
  });

  it("something even from letters that amend each other in a circle, or something unknown", () => {
    const circle = [letter("a", "patient", CAT, { amends: "b" }), letter("b", "patient", CAT, { amends: "a" })];
    expect(patientsOf(circle.map((one, at) => pulled(at + 1, one))).length).toBeGreaterThan(0);
    const orphan = letter("c", "patient", CAT, { amends: "unknown" });
    expect(patientsOf([pulled(1, orphan)])).toMatchObject([{ id: "unknown", amendments: 0 }]);
  });
});

describe("on a phone", () => {
  it("a visit is seen at once, says where it stands, and then that it is in the record", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.fault = () => ({ failed: "no_network" });
    const patient = await phone.file({ kind: "patient", body: CAT });
    await phone.file({ kind: "measurement", body: measurement(patient.id), assessment: { verdict: "steady" } });
    expect(await phone.visits(patient.id)).toMatchObject([{ inRecord: false, state: "waiting" }]);
    shared.server.fault = () => undefined;
    shared.server.judge = () => ({ answer: "stored", assessment: { verdict: "scattered" } });
    await phone.syncNow();
    await quiet(phone);
    const [visit] = await phone.visits(patient.id);
    expect(visit).toMatchObject({ inRecord: true, position: 2, letter: { assessment: { verdict: "steady" } } });
    expect(visit?.serverAssessment).toEqual({ verdict: "scattered" });
    expect(await phone.patients()).toMatchObject([{ id: patient.id, inRecord: true, visits: 1 }]);
  });

  it("a refused amendment shows that it needs somebody, and the earlier wording stays readable", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    const { id } = await phone.file({ kind: "patient", body: CAT });
    const first = await phone.file({ kind: "measurement", body: measurement(id) });
    await quiet(phone);
    shared.server.judge = () => ({ answer: "refused", code: "schema_invalid", path: "/body" });
    const body = { ...measurement(id), place: "home" };
    await phone.file({ kind: "measurement", body, amends: first.id, reason: "place" });
    await quiet(phone);
    const standing = { id: first.id, inRecord: false, state: "refused", code: "schema_invalid" };
    expect(await phone.visits(id)).toMatchObject([{ ...standing, earlier: [{ id: first.id }] }]);
  });

  it("an amended patient and bag show their latest own wording at once, and the record's after", async () => {
    const shared = new FakePhone();
    const { phone } = await shared.signedIn();
    shared.server.fault = () => ({ failed: "no_network" });
    const [cat, van] = [await phone.file({ kind: "patient", body: CAT }), await phone.file({ kind: "bag", body: { name: "Van" } })];
    const whole = { ...CAT, name: "Bella B", sites_not_used: [{ site: "tail_base", why: "missing" }], bruises: true };
    await phone.file({ kind: "patient", body: whole, amends: cat.id, reason: "two Bellas" });
    await phone.file({ kind: "bag", body: { name: "Van", cuffs: [{ width_mm: 30 }] }, amends: van.id });
    expect(await phone.patients()).toMatchObject([{ id: cat.id, letter: { body: whole }, inRecord: false, amendments: 1 }]);
    expect(await phone.bags()).toMatchObject([{ id: van.id, letter: { body: { cuffs: [{ width_mm: 30 }] } }, inRecord: false }]);
    shared.server.fault = () => undefined;
    await phone.syncNow();
    await quiet(phone);
    expect(await phone.patients()).toMatchObject([{ id: cat.id, letter: { body: whole }, inRecord: true }]);
    expect(await phone.bags()).toMatchObject([{ id: van.id, inRecord: true }]);
    await phone.signOut();
    expect(await phone.bags()).toEqual([]);
  });

  it("another phone's patient and visits are there after a pull", async () => {
    const shared = new FakePhone();
    const patient = strangeLetter("patient", { species: "dog", name: "Rex" });
    const { id } = JSON.parse(patient) as { id: string };
    shared.server.add(patient, 1);
    shared.server.add(strangeLetter("measurement", { ...measurement(id), species: "dog" }), 2, { verdict: "too_few" });
    const { phone } = await shared.signedIn();
    expect(await phone.patients()).toMatchObject([{ id, visits: 1, inRecord: true }]);
    const standing = { inRecord: true, position: 2, serverAssessment: { verdict: "too_few" } };
    expect(await phone.visits(id)).toMatchObject([standing]);
  });
});
