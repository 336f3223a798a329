/** A day typed as three numbers. Lengths of months and the leap rule are those of the Gregorian calendar (ISO 8601). */
import { describe, expect, it } from "vitest";
import { dayTyped, NO_DAY, readDay } from "../../../../client/src/screens/bag/bag_day.ts";
import { begun, itemBegun, itemPut, itemWith } from "../../../../client/src/screens/bag/bag_edit.ts";

const typed = (day: string, month: string, year: string) => ({ day, month, year });

describe("a day in three fields", () => {
  it("is read as day, month, year, and back", () => {
    expect(readDay(typed("3", "11", "2026")).day).toBe(Date.UTC(2026, 10, 3) / 86_400_000);
    expect(readDay(typed(" 03", "11 ", "2026")).day).toBe(20_760);
    expect(dayTyped(20_760)).toEqual(typed("3", "11", "2026"));
    expect([readDay(typed("29", "2", "2024")).day, readDay(typed("31", "12", "1999")).day]).toEqual([19_782, 10_956]);
  });

  it("may be left empty", () => {
    expect([readDay(NO_DAY), dayTyped(undefined)]).toEqual([{}, NO_DAY]);
  });

  it.each([
    ["", "11", "2026", "day"], ["32", "11", "2026", "day"], ["3", "13", "2026", "month"], ["3", "nov", "2026", "month"],
    ["3", "11", "26", "year"], ["3", "11", "", "year"], ["0", "1", "2026", "day"],
  ])("%s.%s.%s names the field that keeps it from being one", (day, month, year, wrong) => {
    expect(readDay(typed(day, month, year))).toEqual({ wrong });
  });

  it.each([["31", "2", "2026"], ["29", "2", "2025"], ["31", "4", "2026"]])("%s.%s.%s is no day", (day, month, year) => {
    expect(readDay(typed(day, month, year))).toEqual({ wrong: "day", no_such: true });
  });
});

describe("the last check of a gauge", () => {
  const gauge = (checked: ReturnType<typeof typed>) => itemPut(itemWith(itemBegun(begun(undefined, "Van", ""), "gauges"), { name: "Round one", checked }), "x");

  it("goes into the bag as it was typed, and out of it when it is emptied", () => {
    const edit = gauge(typed("3", "11", "2026"));
    expect(edit.body.gauges).toEqual([{ name: "Round one", type: "aneroid", checked_on_day: 20_760 }]);
    const again = itemPut(itemWith(itemBegun(edit, "gauges", 0), { checked: NO_DAY }), "x");
    expect(again.body.gauges).toEqual([{ name: "Round one", type: "aneroid" }]);
    expect(itemPut(itemBegun(edit, "gauges", 0), "x").body.gauges).toEqual(edit.body.gauges);
  });

  it("that cannot be read stays open to be mended, each time it is tried", () => {
    const edit = gauge(typed("3", "13", "2026"));
    expect([edit.item?.kind, edit.body.gauges, edit.tried]).toEqual(["gauges", undefined, 1]);
    expect(itemPut(edit, "x").tried).toBe(2);
  });
});
