/** Finding an animal by what a person types: name, mark, or a number grouped as the paper has it. Invented animals. */
import { describe, expect, it } from "vitest";
import type { Letter, PatientCard } from "../../../../client/src/offline/phone_types.ts";
import { folded, matching } from "../../../../client/src/screens/animal/animals.ts";

function card(id: string, body: object): PatientCard {
  const letter = { id, kind: "patient", schema: 1, author: "a", basis: 0, made_at_ms: 0, zone: "Etc/UTC", offset_min: 0, body } as Letter;
  return { id, letter, inRecord: true, amendments: 0, visits: 0 };
}

const CARDS = [
  card("zoe", { species: "cat", name: "Zoë", mark: "kennel 7, grey" }),
  card("rex", { species: "dog", name: "Rex", identifiers: [{ kind: "chip", text: "276 098 100 000 001" }, { kind: "tag", text: "B-12" }] }),
  card("mo", { species: "dog", name: "Mo" }),
];

const found = (text: string): string[] => matching(CARDS, text).map(({ id }) => id);

describe("an animal is found", () => {
  it.each([
    ["", ["zoe", "rex", "mo"]],
    ["zoe", ["zoe"]],
    ["ZOË grey", ["zoe"]],
    ["grey rex", []],
    ["kennel", ["zoe"]],
    ["276098100000001", ["rex"]],
    ["276-098-100", ["rex"]],
    ["276 098 1000 00001", ["rex"]],
    ["0981", ["rex"]],
    ["b12", ["rex"]],
    ["b-12", ["rex"]],
    ["nobody", []],
  ])("%j", (text, ids) => expect(found(text)).toEqual(ids));

  it("with accents and case folded on both sides", () => expect(folded("ÉÑÅ")).toBe("ena"));
});
