/**
 * What is typed about an animal. Microchips: ISO 11784 (64 bits: 10 of a country or maker, 38 of a number), written as 15 digits;
 * 2^38 - 1 = 274877906943. Days of birth are days since 1970-01-01, compared here with the platform's own calendar.
 */
import { describe, expect, it } from "vitest";
import { check } from "../../../../client/src/contract/wire.ts";
import type { Letter, PatientCard } from "../../../../client/src/offline/phone_types.ts";
import type { Patient1 as Patient } from "../../../../client/src/contract/wire_types.ts";
import { ageFacts, amended, birthDay, changesIdentity, chipWarning } from "../../../../client/src/screens/animal/patient_facts.ts";
import { firstOf, readWho } from "../../../../client/src/screens/animal/patient_who.ts";

describe("a microchip's number", () => {
  it.each([
    ["276098100000001", undefined],
    ["276 098 100 000 001", undefined],
    ["276-0981-00000001", undefined],
    ["900274877906943", undefined],
    ["900274877906944", "range"],
    ["999000000000001", "test"],
    ["27609810000000", "length"],
    ["2760981000000012", "length"],
    ["27609810000000A", "length"],
    ["A12B", "length"],
  ])("%s: %s", (text, odd) => expect(chipWarning(text)).toBe(odd));
});

const NOW_MS = Date.UTC(2026, 10, 25, 12);
const day = (text: string): number => Date.parse(`${text}T00:00:00Z`) / 86_400_000;

describe("a day of birth", () => {
  it.each([
    ["born", "2019", day("2019-07-01")],
    ["born", " 3/2019 ", day("2019-03-15")],
    ["born", "03.2019", day("2019-03-15")],
    ["born", "2019-12", day("2019-12-15")],
    ["born", "2026", day("2026-07-01")],
    ["born", "11/2026", day("2026-11-15")],
    ["years", "7", day("2019-11-25")],
    ["years", "1.5", day("2025-05-25")],
    ["months", "5", day("2026-06-25")],
    ["months", "0", day("2026-11-25")],
  ] as const)("%s %s", (as, text, expected) => expect(birthDay(as, text, NOW_MS)).toBe(expected));

  it("never lies ahead: a year or month that has begun ends today at the latest", () => {
    const march = Date.UTC(2026, 2, 3);
    expect(birthDay("born", "2026", march)).toBe(day("2026-03-03"));
    expect(birthDay("born", "3/2026", march)).toBe(day("2026-03-03"));
  });

  it.each([
    ["born", "2027"], ["born", "12/2026"], ["born", "1950"], ["born", "13/2019"], ["born", "0/2019"], ["born", "19"], ["born", "old"], ["born", "-2019"],
    ["years", "old"], ["years", "60"], ["years", "-1"], ["months", "1e2"],
  ] as const)("%s %s is not guessed at", (as, text) => expect(birthDay(as, text, NOW_MS)).toBeUndefined());

  it("becomes an age in months below two years, in years from then on", () => {
    expect([ageFacts(23), ageFacts(24), ageFacts(95)]).toEqual([{ unit: "months", n: 23 }, { unit: "years", n: 2 }, { unit: "years", n: 7 }]);
  });
});

const OLD: Patient = {
  species: "cat", name: "Mo", mark: "grey", born_on_day: day("2019-03-02"), sex: "male",
  identifiers: [{ kind: "chip", text: "276098100000001" }], handling: { grade: 2 }, bruises: true,
};

function card(body: Patient): PatientCard {
  const letter = { id: "a", kind: "patient", schema: 1, author: "a", basis: 0, made_at_ms: 0, zone: "Etc/UTC", offset_min: 0, body };
  return { id: "first", letter: letter as unknown as Letter, inRecord: true, amendments: 0, visits: 0 };
}

describe("a change of an animal", () => {
  const form = (change: { texts?: Record<string, string>; chosen?: Record<string, string> } = {}) => {
    const { texts, chosen } = firstOf(OLD);
    return { form: true as const, about: "who/first", texts: { ...texts, ...change.texts }, chosen: { ...chosen, ...change.chosen } };
  };

  it("leaves what was not touched exactly as it was, down to the day", () => {
    expect(readWho(OLD, form(), NOW_MS)).toEqual({ patient: { ...OLD, breed: undefined }, problems: [] });
  });

  it("asks a reason for another name, mark, species or identifier, and for nothing else", () => {
    const asked = (change: Parameters<typeof form>[0]) => readWho(OLD, form(change), NOW_MS).problems.map(({ field }) => field);
    for (const texts of [{ name: "Moe" }, { mark: "" }, { identifier_0: "276098100000002" }, { identifier_0: "" }]) {
      expect(asked({ texts })).toEqual(["reason"]);
      expect(asked({ texts: { ...texts, reason: "misread" } })).toEqual([]);
    }
    expect(asked({ chosen: { species: "dog" } })).toEqual(["reason"]);
    expect(asked({ texts: { breed: "mixed", birth: "2018" }, chosen: { sex: "male_neutered" } })).toEqual([]);
    expect(asked({ texts: { birth: "long ago" } })).toEqual(["birth"]);
    expect(changesIdentity(OLD, { ...OLD, handling: { grade: 0 } })).toBe(false);
  });

  it("carries the whole animal in a letter that the wire takes, names the first letter, and leaves out what was taken away", () => {
    const { patient } = readWho(OLD, form({ texts: { mark: "", identifier_0: "", breed: "mixed" } }), NOW_MS);
    const letter = amended(card(OLD), patient, "sold");
    const { mark: _mark, identifiers: _identifiers, ...rest } = OLD;
    expect(letter).toEqual({ kind: "patient", amends: "first", reason: "sold", body: { ...rest, breed: "mixed" } });
    expect(check("patient.1", letter.body)).toBeUndefined();
    expect(amended(card(OLD), { bruises: undefined, sites_not_used: [] }).body).not.toHaveProperty("bruises");
  });
});
