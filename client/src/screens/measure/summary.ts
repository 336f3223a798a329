/* One line for a folded part: what was noted in it. Must not hide that something was not. */
import { say } from "../../contract/words";
import { cm } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import { judged } from "./judged";
import { setNow, type Open, type Part } from "./open";
import { phraseOf } from "./wording";

function calmLine({ measurement }: Open): string {
  const { demeanour, state, rest_s, place } = measurement;
  return [
    demeanour && say(`demeanour-${demeanour}`),
    state && state !== "awake" && say(`state-${state}`),
    rest_s === undefined ? say("summary-rest-none") : say("summary-rest", { minutes: String(Math.floor(rest_s / 60)) }),
    place && say(`place-${place}`),
  ].filter(Boolean).join(", ");
}

function cuffLine(open: Open): string {
  const { method, limb_circumference_mm: limb, cuff_width_mm: width, site } = setNow(open);
  return [
    say(`method-${method}`),
    limb !== undefined && say("summary-limb", { cm: cm(limb) }),
    width === undefined ? say("used-cuff-none") : say("used-cuff", { mm: String(width) }),
    site && say(`site-${kebab(site)}`),
  ].filter(Boolean).join(", ");
}

/** The folded part in one line. The result says nothing before *Finish*. */
export function summaryOf(open: Open, part: Part): string {
  if (part === "ready") return "";
  if (part === "calm") return calmLine(open);
  if (part === "cuff") return cuffLine(open);
  if (part === "readings") return say("readings-count", { n: open.measurement.sets.reduce((sum, set) => sum + set.readings.length, 0) });
  return open.finished ? phraseOf(judged(open)) : "";
}
