/** What is half typed of a bag is there again after leaving and coming straight back, and stays in the store it was typed in. */
import { expect, it } from "vitest";
import { begun, type Edit } from "../../../../client/src/screens/bag/bag_edit.ts";
import { leftEdit, openEdit, renewed, whileFiled } from "../../../../client/src/screens/bag/bag_kept.ts";

const NAME = "bag_edit:new";
const begin = (): Edit => begun(undefined, "", "");
const named = (name: string) => (edit: Edit): Edit => ({ ...edit, name });
const later = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

/** A store whose writes take a while, and fail while `isFull`. */
function phoneOf() {
  const kept = new Map<string, unknown>();
  const phone = {
    kept, isFull: false,
    async remember(name: string, value: unknown) {
      await later();
      if (phone.isFull) throw new Error("full");
      kept.set(name, value);
    },
    recall: async (name: string) => kept.get(name),
  };
  return phone;
}

it("waits for a press in flight before it is found again", async () => {
  const phone = phoneOf();
  const one = await openEdit(phone, NAME, begin);
  void one.keeper.act(named("Van"));
  leftEdit(one);
  expect((await openEdit(phone, NAME, begin)).keeper.head().name).toBe("Van");
});

it("tries once more at leave what could not be written, and has it still where that failed", async () => {
  const phone = phoneOf();
  const one = await openEdit(phone, NAME, begin);
  phone.isFull = true;
  await one.keeper.act(named("Van"));
  leftEdit(one);
  const two = await openEdit(phone, NAME, begin);
  expect([two.keeper.head().name, two.keeper.unkept.value?.head.name, phone.kept.size]).toEqual(["Van", "Van", 0]);
  phone.isFull = false;
  leftEdit(two);
  expect((await openEdit(phone, NAME, begin)).keeper.shown.value.name).toBe("Van");
  expect(phone.kept.get(NAME)).toMatchObject({ name: "Van" });
});

it("keeps to the store it was opened in", async () => {
  const [record, training] = [phoneOf(), phoneOf()];
  const one = await openEdit(record, NAME, begin);
  void one.keeper.act(named("Van"));
  void one.keeper.act(named("Van 2"));
  leftEdit(one);
  expect((await openEdit(training, NAME, begin)).keeper.head().name).toBe("");
  expect((await openEdit(record, NAME, begin)).keeper.head().name).toBe("Van 2");
  expect(training.kept.size).toBe(0);
});

it("dropped does not come back by a press that was on its way, and what is typed next is not wiped by the dropping", async () => {
  const phone = phoneOf();
  const one = await openEdit(phone, NAME, begin);
  void one.keeper.act(named("Van"));
  void one.keeper.act(named("Van 2"));
  const two = renewed(one, begin());
  leftEdit(two);
  expect((await openEdit(phone, NAME, begin)).keeper.head().name).toBe("");
  const three = renewed(two, begin());
  await three.keeper.act(named("Car"));
  expect(phone.kept.get(NAME)).toMatchObject({ name: "Car" });
});

it("left while it is filed, is not offered once more to whoever comes straight back", async () => {
  const phone = phoneOf();
  const one = await openEdit(phone, NAME, begin);
  await one.keeper.act(named("Van"));
  const filing = whileFiled(one, async () => {
    await later(); // the letter on its way to the disk: the change lies there until it is
    phone.kept.delete(NAME);
  });
  leftEdit(one);
  expect((await openEdit(phone, NAME, begin)).keeper.head().name).toBe("");
  await filing;
});

it("left while it is filed in vain, is there still", async () => {
  const phone = phoneOf();
  const one = await openEdit(phone, NAME, begin);
  await one.keeper.act(named("Van"));
  const filing = whileFiled(one, () => later().then(() => Promise.reject(new Error("full"))));
  leftEdit(one);
  await expect(filing).rejects.toThrow("full");
  expect((await openEdit(phone, NAME, begin)).keeper.head().name).toBe("Van");
});
