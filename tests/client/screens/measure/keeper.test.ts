/*
 * Kept before painted: nothing is shown that is not written, presses stay in order, and a full disk loses nothing.
 */
import { describe, expect, it } from "vitest";
import { keeperOf } from "../../../../client/src/screens/measure/keeper.ts";

interface Write {
  text: string;
  settle: (failure?: Error) => void;
}

function slowDisk(): { writes: Write[]; write: (text: string) => Promise<void> } {
  const writes: Write[] = [];
  const write = (text: string): Promise<void> =>
    new Promise((resolve, reject) => writes.push({ text, settle: (failure) => (failure ? reject(failure) : resolve()) }));
  return { writes, write };
}

const press = (key: string) => (text: string): string => text + key;
const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe("the keeper", () => {
  it("shows a digit only after its write resolved", async () => {
    const { writes, write } = slowDisk();
    const keeper = keeperOf("", write, String);
    void keeper.act(press("1"));
    await turn();
    expect([keeper.head(), keeper.shown.value]).toEqual(["1", ""]);
    writes[0]?.settle();
    await turn();
    expect(keeper.shown.value).toBe("1");
  });

  it("queues presses made while it writes, in order, one write at a time", async () => {
    const { writes, write } = slowDisk();
    const keeper = keeperOf("", write, String);
    for (const key of "142") void keeper.act(press(key));
    expect(writes.map(({ text }) => text)).toEqual(["1"]);
    writes[0]?.settle();
    await turn();
    expect(keeper.shown.value).toBe("1");
    expect(writes.map(({ text }) => text)).toEqual(["1", "142"]);
    writes[1]?.settle();
    await turn();
    expect(keeper.shown.value).toBe("142");
  });

  it("keeps what could not be written, says so, and writes it all at the next try", async () => {
    const { writes, write } = slowDisk();
    const keeper = keeperOf("", write, (failure) => (failure as Error).message);
    void keeper.act(press("1"));
    writes[0]?.settle(new Error("full"));
    await turn();
    expect([keeper.shown.value, keeper.unkept.value]).toEqual(["", { head: "1", code: "full" }]);
    void keeper.act(press("4"));
    writes[1]?.settle();
    await turn();
    expect([keeper.shown.value, keeper.unkept.value]).toEqual(["14", undefined]);
  });
});
