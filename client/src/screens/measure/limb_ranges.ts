/* What a limb circumference is likely to be, to ask about a unit that was meant otherwise. No rule and no limit: it only asks, and
   never blocks. Source: project, figures of our own after handling ordinary dogs and cats from toy to giant; read in no paper. */
import type { Measurement1 as Measurement } from "../../contract/wire_types";

/** Where a cuff lies, in mm round: from a kitten's or a toy dog's tail base to a big tom's or a giant dog's limb. */
export const LIMB_LIKELY_MM: Record<Measurement["species"], { least: number; most: number }> = {
  cat: { least: 30, most: 160 },
  dog: { least: 40, most: 400 },
};

/** A circumference older than this is offered with its day and the words to measure anew (project). */
export const LIMB_OLD_DAYS = 183;
