/* A second tap while the first act is on its way: nothing happens twice, and a failed act may be tried again. */
import { expect, it } from "vitest";
import { oneAtATime } from "../../../client/src/screens/one_at_a_time.ts";

it("files once for two taps, and again once the first is over", async () => {
  const busy = { current: false };
  let filed = 0;
  const file = async (): Promise<void> => {
    await Promise.resolve();
    filed += 1;
  };
  await Promise.all([oneAtATime(busy, file), oneAtATime(busy, file)]);
  expect(filed).toBe(1);
  await oneAtATime(busy, file);
  expect(filed).toBe(2);
});

it("lets a failure through, and may be tried again", async () => {
  const busy = { current: false };
  await expect(oneAtATime(busy, () => Promise.reject(new Error("full")))).rejects.toThrow("full");
  expect(busy.current).toBe(false);
});
