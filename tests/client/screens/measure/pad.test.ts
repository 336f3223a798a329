/*
 * The number pad: what each key does to the half-typed reading.
 */
import { describe, expect, it } from "vitest";
import { deleted, digit, EMPTY_PAD, fieldsOf, isEmpty, skipped, type Pad } from "../../../../client/src/screens/measure/pad.ts";

const doppler = fieldsOf("doppler");
const machine = fieldsOf("oscillometric");

function typed(text: string, fields: typeof machine, pad: Pad = EMPTY_PAD): Pad {
  return [...text].reduce((now, key) => digit(now, key, fields), pad);
}

describe("keys", () => {
  it("takes three digits and no fourth", () => {
    expect(typed("142", doppler).texts).toEqual({ systolic: "142" });
    expect(typed("1428", doppler)).toEqual(typed("142", doppler));
  });

  it("moves on after the third digit, so that 142, 104, 85 needs eight digits and nothing between them", () => {
    const keys = ["142", "104", "85"];
    const pad = keys.reduce((now, text) => typed(text, machine, now), EMPTY_PAD);
    expect(pad).toEqual({ field: "diastolic", texts: { systolic: "142", mean: "104", diastolic: "85" } });
  });

  it("skips a field that the machine did not show, and comes round again", () => {
    let pad = typed("142", machine);
    pad = skipped(pad, machine);
    expect(typed("85", machine, pad).texts).toEqual({ systolic: "142", diastolic: "85" });
    expect(skipped(skipped(pad, machine), machine).field).toBe("systolic");
    expect(skipped(EMPTY_PAD, doppler).field).toBe("systolic");
  });

  it("deletes back over the border of two fields, and stops at the beginning", () => {
    const pad = deleted(typed("142", machine), machine);
    expect(pad).toEqual({ field: "systolic", texts: { systolic: "14" } });
    const bare = deleted(deleted(deleted(pad, machine), machine), machine);
    expect(isEmpty(bare)).toBe(true);
    expect(bare.field).toBe("systolic");
  });
});
