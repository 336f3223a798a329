/** A form about an animal that is over: given up only when it is off the disk, and after a filing begun from what was filed. */
import { expect, it } from "vitest";
import type { PatientCard } from "../../../../client/src/offline/journal.ts";
import { cardAfter, cardFiled, giveUp } from "../../../../client/src/screens/animal/form_over.ts";

const cardOf = (id: string): PatientCard => ({ id: "animal", letter: { id } }) as PatientCard;

async function saidOf(drop: () => Promise<void>): Promise<string[]> {
  const said: string[] = [];
  await giveUp({ drop }, () => said.push("given up"), (failure) => said.push((failure as Error).message));
  return said;
}

it("is given up when it is dropped, and not when the drop failed", async () => {
  expect(await saidOf(() => Promise.resolve())).toEqual(["given up"]);
  expect(await saidOf(() => Promise.reject(new Error("the disk is full")))).toEqual(["the disk is full"]);
});

it("begins from what was filed until the page has read something newer", () => {
  const [old, newer] = [cardOf("1"), cardOf("3")];
  const filed = cardFiled(old, { body: { name: "Mira", handling: { grade: 2 } } }, "2");
  expect(filed).toEqual({ id: "animal", inRecord: false, letter: { id: "2", body: { name: "Mira", handling: { grade: 2 } } } });
  const just = { over: "1", card: filed };
  expect([cardAfter(old, undefined), cardAfter(old, just), cardAfter(newer, just)]).toEqual([old, filed, newer]);
});
