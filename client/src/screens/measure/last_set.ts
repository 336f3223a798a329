/* Takes the last visit's placing over into the set now. Pure; must not touch readings or method. */
import { inSetNow, without, type LastSet, type Open } from "./open";
import { done, type Patch } from "./undo";

/** The set now with everything of the last one, as one act. */
export function takenFromLast(open: Open, last: LastSet): Open {
  const { limb_circumference_mm: limb, instrument } = last;
  const patches: Patch[] = Object.entries(last).map(([key, to]) => ({ at: inSetNow(open, key), to }));
  const texts: Patch[] = [
    ...(limb === undefined ? [] : [{ at: ["texts", "circumference"], to: `${limb} mm` }]),
    ...(instrument === undefined ? [] : [{ at: ["texts", "instrument"], to: instrument }]),
  ];
  return done(without(open), "act-choice", { field: "as-last-time-act" }, [...patches, ...texts]);
}
