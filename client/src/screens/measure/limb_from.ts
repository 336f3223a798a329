/* Whose limb circumference stands in a set where it was taken over from a last visit, and that it goes when the visit is filed under
   another animal: a limb is the animal's own. Pure. Must not touch a value that was measured or typed today. */
import type { LimbFrom, Open } from "./open";
import type { Act, Patch } from "./undo";

/** The visit the limb in a set (from 0) was taken over from; undefined where it was measured today, or is not noted. */
export function limbFrom({ limb_from, measurement }: Open, set = measurement.sets.length - 1): LimbFrom | undefined {
  if (measurement.sets[set]?.limb_circumference_mm === undefined) return undefined;
  for (let at = set; at >= 0; at -= 1) {
    const noted = limb_from?.[at];
    if (noted !== undefined) return noted ?? undefined; // a new set carries the limb on, and where it came from
  }
  return undefined;
}

/** The limb in the set now is the person's own from now on. */
export function limbIsToday(open: Open): Open {
  if (!open.limb_from) return open;
  return { ...open, limb_from: { ...open.limb_from, [open.measurement.sets.length - 1]: null } };
}

/** The text of a limb that was taken over, as its field shows it. */
export function limbText(limb_mm: number): string {
  return `${limb_mm} mm`;
}

function withLimbs(open: Open, limbs: readonly { set: number; mm?: number }[], from: LimbFrom | null): Open {
  const sets = open.measurement.sets.map((set, at) => {
    const one = limbs.find((limb) => limb.set === at);
    const { limb_circumference_mm: _limb, ...rest } = set;
    return !one ? set : one.mm === undefined ? rest : { ...rest, limb_circumference_mm: one.mm };
  });
  const limb_from = { ...open.limb_from, ...Object.fromEntries(limbs.map(({ set }) => [set, from])) };
  const last = limbs.find(({ set }) => set === sets.length - 1);
  const { circumference: _text, circumference_unit: _unit, ...texts } = open.texts;
  const shown = !last ? open.texts : last.mm === undefined ? texts : { ...texts, circumference: limbText(last.mm), circumference_unit: "mm" };
  return { ...open, limb_from, texts: shown, measurement: { ...open.measurement, sets } };
}

/** An act whose way back would bring such a limb, or its text, without it. */
function withoutLimb(act: Act, isOthers: (from: LimbFrom) => boolean): Act {
  const bringsBack = act.reverse.some(({ at, to }) => at[0] === "limb_from" && to && isOthers(to as unknown as LimbFrom));
  if (!bringsBack && act.word !== "act-new-set") return act;
  const bare = ({ at, to }: Patch): Patch => (at[0] === "texts" && at[1] === "circumference" ? { at, to: "" }
    : at[0] === "limb_from" || at[3] === "limb_circumference_mm" ? { at } : { at, ...(to === undefined ? {} : { to }) });
  return { ...act, reverse: act.reverse.map(bare) };
}

/** Takes out what was another animal's than this; remembered, so that it can be said, and put back with that animal. */
function takenOut(open: Open, patient: string | undefined): Open {
  const others = open.measurement.sets.flatMap(({ limb_circumference_mm: mm }, set) => {
    const from = limbFrom(open, set);
    return mm === undefined || !from || from.patient === patient ? [] : [{ set, mm, from }];
  });
  const [first] = others;
  if (!first) return open;
  const acts = open.acts.map((act) => withoutLimb(act, (from) => from.patient !== patient));
  const bare = withLimbs(open, others.map(({ set }) => ({ set })), null);
  return { ...bare, acts, limb_out: { from: first.from, limbs: others.map(({ set, mm }) => ({ set, mm })) } };
}

/** Puts back what was taken out of this animal's, where nothing was measured or typed in its place. */
function putBack(open: Open, patient: string | undefined): Open {
  const { limb_out: out, ...rest } = open;
  if (!out || out.from.patient !== patient) return open;
  const last = open.measurement.sets.length - 1;
  const isFree = (set: number): boolean =>
    open.measurement.sets[set] !== undefined && open.measurement.sets[set].limb_circumference_mm === undefined
    && (set !== last || !open.texts["circumference"]?.trim());
  return withLimbs(rest, out.limbs.filter(({ set }) => isFree(set)), out.from);
}

/** The limbs as they are to stand under this animal. */
export function limbsUnder(open: Open, patient: string | undefined): Open {
  return takenOut(putBack(open, patient), patient);
}

/** Whose limb was taken out and of which day, as long as none was measured in its place. */
export function limbTakenOut({ limb_out, measurement }: Open): { name: string; day: number } | undefined {
  if (!limb_out) return undefined;
  const last = measurement.sets.length - 1;
  const isMeasured = limb_out.limbs.some(({ set }) => set === last) && measurement.sets[last]?.limb_circumference_mm !== undefined;
  return isMeasured ? undefined : { name: limb_out.from.name, day: limb_out.from.day };
}
