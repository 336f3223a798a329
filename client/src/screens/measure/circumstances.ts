/* What happened in the last 30 minutes: several may hold, "none of these" is an answer, and no answer is none. Pure. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { without, type Open } from "./open";
import { done, type Patch } from "./undo";

export type Circumstance = NonNullable<Measurement["circumstances"]>[number];

/** In the order of how often they happen before a measurement. */
export const CIRCUMSTANCES = [
  "examined", "blood_taken", "injected", "travelled", "exercised", "waited_near_dogs", "in_pain_or_ill",
] as const satisfies readonly Circumstance[];

/** What stood for pain before *Ready?* said it: "ticked" by a person, "none" of these, or nothing. A tick by hand is a person's. */
export const PAIN_BEFORE = ["texts", "pain_before"] as const;

function put(open: Open, to: Circumstance[] | undefined, pain_before?: string): Open {
  const patch: Patch = { at: ["measurement", "circumstances"], ...(to === undefined ? {} : { to }) };
  const before: Patch[] = pain_before === undefined ? [] : [{ at: [...PAIN_BEFORE], to: pain_before }];
  return done(without(open), "act-choice", { field: "field-circumstances" }, [patch, ...before]);
}

/** One of them ticked, or its tick taken away; without any tick nothing is answered. Kept in the order they are asked. */
export function toggled(open: Open, one: Circumstance): Open {
  const had = open.measurement.circumstances ?? [];
  const now = CIRCUMSTANCES.filter((each) => (each === one ? !had.includes(one) : had.includes(each)));
  const pain_before = one === "in_pain_or_ill" ? (had.includes(one) ? "" : "ticked") : undefined;
  return put(open, now.length > 0 ? now : undefined, pain_before);
}

/** None of them, as an answer; a second time takes the answer away. */
export function noneOfThem(open: Open): Open {
  return put(open, open.measurement.circumstances?.length === 0 ? undefined : []);
}
