/** A form over an animal that somebody saved anew meanwhile: nothing typed is lost, and nothing saved is written over unsaid. */
import { describe, expect, it } from "vitest";
import { inDispute, keptHere, settled, takenStill, tookOver, type Fact } from "../../../../client/src/screens/animal/meanwhile.ts";
import { firstOf, readWho } from "../../../../client/src/screens/animal/patient_who.ts";
import { chosenIn, typedIn } from "../../../../client/src/screens/kept_form.ts";
import type { Patient1 as Patient } from "../../../../client/src/contract/wire_types.ts";
import type { Form } from "../../../../client/src/screens/forms_begun.ts";
import { isChanged } from "../../../../client/src/screens/animal/patient_meanwhile.tsx";
import { whoFacts } from "../../../../client/src/screens/animal/patient_who_facts.ts";

const FACTS: Fact[] = whoFacts().map(({ fact }) => fact);
const BORN = 18_000; // 14 Apr 2019: the form shows month and year alone
const MIRA = { species: "cat", name: "Mira", mark: "kennel 7", born_on_day: BORN } as Patient;
const begun = (patient: Patient): Form => ({ form: true, about: "who/1", ...firstOf(patient), before: firstOf(patient) });
const saved = (change: Partial<Patient>): Patient => ({ ...MIRA, ...change });
const filed = (form: Form, stands: Patient): Patient => readWho(stands, settled(form, firstOf(stands), FACTS), 1_700_000_000_000).patient;

describe("a change of an animal that somebody saved meanwhile", () => {
  it("follows the newer wording in all that was not typed in, to the day of birth", () => {
    const now = saved({ breed: "Manx", sex: "female", born_on_day: BORN + 1, identifiers: [{ kind: "chip", text: "985112004567890" }] });
    const form = typedIn(begun(MIRA), "mark", "kennel 9");
    expect(inDispute(form, firstOf(now), FACTS)).toEqual([]);
    expect(filed(form, now)).toEqual({ ...now, mark: "kennel 9" });
    expect(settled(form, firstOf(now), FACTS).taken).toEqual(["identifiers", "sex", "breed"]);
  });

  it("asks where both changed the same, and holds both until a person chose", () => {
    const now = saved({ name: "Mirella" });
    const form = typedIn(begun(MIRA), "name", "Mirabel");
    expect(inDispute(settled(form, firstOf(now), FACTS), firstOf(now), FACTS)).toEqual([["name"]]);
    expect(settled(form, firstOf(now), FACTS).texts["name"]).toBe("Mirabel");
    const [here, there] = [keptHere(form, firstOf(now), ["name"]), tookOver(form, firstOf(now), ["name"])];
    expect([here, there].map((one) => inDispute(one, firstOf(now), FACTS))).toEqual([[], []]);
    expect([filed(here, now).name, filed(there, now).name]).toEqual(["Mirabel", "Mirella"]);
  });

  it("asks again when it is saved once more after the choice", () => {
    const form = keptHere(typedIn(begun(MIRA), "name", "Mirabel"), firstOf(saved({ name: "Mirella" })), ["name"]);
    expect(inDispute(form, firstOf(saved({ name: "Miranda" })), FACTS)).toEqual([["name"]]);
  });

  it("is no dispute where both say the same", () => {
    const now = saved({ name: "Mirabel" });
    const form = typedIn(begun(MIRA), "name", "Mirabel ");
    expect(inDispute(settled(form, firstOf(now), FACTS), firstOf(now), FACTS)).toEqual([]);
  });

  it("takes a day of birth and how it was told as one, and so all identifiers", () => {
    const aged = typedIn(chosenIn(begun(MIRA), "birth_as", "years"), "birth", "5");
    expect(inDispute(aged, firstOf(saved({ born_on_day: BORN + 400 })), FACTS)).toEqual([["birth", "birth_as"]]);
    const tagged = typedIn(chosenIn(chosenIn(begun(MIRA), "identifiers", "1"), "kind_0", "tag"), "identifier_0", "12");
    const now = firstOf(saved({ identifiers: [{ kind: "chip", text: "985112004567890" }] }));
    expect(inDispute(tagged, now, FACTS).map(([first]) => first)).toEqual(["identifiers"]);
    expect(settled(tagged, now, FACTS).texts["identifier_0"]).toBe("12");
  });

  it("tells nobody of anything where nothing was begun, and is the same form where nothing is newer", () => {
    const form = begun(MIRA);
    expect(settled(form, firstOf(MIRA), FACTS)).toBe(form);
    expect(settled(form, firstOf(saved({ breed: "Manx" })), FACTS)).toMatchObject({ texts: { breed: "Manx" } });
    expect(settled(form, firstOf(saved({ breed: "Manx" })), FACTS).taken).toBeUndefined();
  });

  it("kept by an earlier build, which did not note what stood there, asks about every difference", () => {
    const { before: _before, ...old } = typedIn(begun(MIRA), "name", "Mirabel");
    expect(inDispute(old, firstOf(saved({ breed: "Manx" })), FACTS)).toEqual([["name"], ["breed"]]);
  });

  it("kept by an earlier build, does not lose what was cleared in it once one difference was chosen", () => {
    const now = firstOf(saved({ breed: "Manx" }));
    const { before: _before, ...old } = typedIn(typedIn(begun(saved({ breed: "Manx" })), "name", "Mirabel"), "breed", "");
    for (const chosen of [keptHere(old, now, ["name"]), tookOver(old, now, ["name"])]) {
      const form = settled(chosen, now, FACTS);
      expect([form.texts["breed"], inDispute(form, now, FACTS)]).toEqual(["", [["breed"]]]);
      expect(inDispute(keptHere(form, now, ["breed"]), now, FACTS)).toEqual([]);
    }
  });

  it("kept by an earlier build, says of nobody that he changed the animal", () => {
    const now = firstOf(MIRA);
    const { before: _before, ...old } = typedIn(begun(MIRA), "name", "Mirabel");
    const form = settled(old, now, FACTS);
    expect(isChanged(form, inDispute(form, now, FACTS), [])).toBe(false);
    const told = firstOf(saved({ name: "Mirella" }));
    const known = typedIn(begun(MIRA), "name", "Mirabel");
    expect(isChanged(known, inDispute(known, told, FACTS), [])).toBe(true);
  });

  it("says no longer that a fact was taken over once something is typed in it", () => {
    const now = firstOf(saved({ breed: "Manx", sex: "female" }));
    const form = settled(typedIn(begun(MIRA), "mark", "kennel 9"), now, FACTS);
    expect(takenStill(form, FACTS)).toEqual([["sex"], ["breed"]]);
    expect(takenStill(settled(typedIn(form, "breed", "Manx cross"), now, FACTS), FACTS)).toEqual([["sex"]]);
  });
});
