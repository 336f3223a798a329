/*
 * Calming drugs, the instrument's name, and the last visit's placing: what a tap puts into the document, and that one undo
 * takes all of it back. Each document is held against the wire check, since a half-filled field could not be filed.
 */
import { describe, expect, it } from "vitest";
import { checkMeasurement } from "../../../../client/src/contract/wire.ts";
import { takenFromLast } from "../../../../client/src/screens/measure/last_set.ts";
import { problemsOf, withField, withInstrument, withState } from "../../../../client/src/screens/measure/fields.ts";
import { changed, setNow, started, type Open } from "../../../../client/src/screens/measure/open.ts";
import { newSet } from "../../../../client/src/screens/measure/series.ts";
import { undone } from "../../../../client/src/screens/measure/undo.ts";

const open = (): Open => started({ id: "0", now_ms: 1_700_000_000_000, species: "cat", method: "oscillometric" });
const problem = (now: Open): unknown => checkMeasurement(now.measurement as never);

describe("a calming drug", () => {
  const given = (): Open =>
    withField(changed(withState(open(), "calmed"), "field-drug-group", ["measurement", "calming"], { drug_group: "gabapentinoid" }), "hours", "2");

  it("is kept with its hours", () => {
    expect(given().measurement.calming).toEqual({ drug_group: "gabapentinoid", hours: 2 });
    expect(problem(given())).toBeUndefined();
  });

  it("is gone when the animal was not calmed after all, and back with one undo", () => {
    const awake = withState(given(), "awake");
    expect(awake.measurement).not.toHaveProperty("calming");
    expect(awake.texts["hours"]).toBe("");
    const [back] = undone(awake);
    expect([back.measurement.state, back.measurement.calming, back.texts["hours"]]).toEqual(
      ["calmed", { drug_group: "gabapentinoid", hours: 2 }, "2"]);
  });

  it("asks for hours that cannot be", () => {
    expect(problemsOf(withField(given(), "hours", "300"), "calm").map(({ field }) => field)).toEqual(["hours"]);
    expect(problem(withField(given(), "hours", "300"))).toBeUndefined();
  });
});

describe("the instrument", () => {
  it("is kept without the blanks around it; an empty name is none", () => {
    expect(setNow(withInstrument(open(), " machine 2 ")).instrument).toBe("machine 2");
    expect(setNow(withInstrument(withInstrument(open(), "x"), " "))).not.toHaveProperty("instrument");
  });

  it("is named as too long, never cut", () => {
    const long = withInstrument(open(), "m".repeat(61));
    expect(problemsOf(long).map(({ field }) => field)).toEqual(["instrument"]);
    expect(problemsOf(long, "calm")).toEqual([]);
    expect(setNow(long)).not.toHaveProperty("instrument");
    expect(problemsOf(withInstrument(open(), "m".repeat(60)))).toEqual([]);
  });

  it("goes over to a new set unless the method changes", () => {
    const named = withInstrument(open(), "machine 2");
    expect(setNow(newSet(named, "moved")).instrument).toBe("machine 2");
    expect(setNow(newSet(named, "method"))).not.toHaveProperty("instrument");
    expect(newSet(named, "method").texts["instrument"]).toBe("");
  });
});

it("as last time fills in the whole placing with one act", () => {
  const last = { site: "forearm", side: "left", posture: "in_lap", limb_circumference_mm: 85, cuff_width_mm: 30, instrument: "machine 2" } as const;
  const now = takenFromLast(withInstrument(open(), ""), last);
  expect(setNow(now)).toMatchObject(last);
  expect([now.texts["circumference"], now.texts["instrument"]]).toEqual(["85 mm", "machine 2"]);
  expect(problem(now)).toBeUndefined();
  expect(setNow(undone(now)[0])).toEqual(setNow(open()));
});
