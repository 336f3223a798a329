/* One more site not to be used: which, why, and until when. A limb that is missing is asked for no end. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { dayOnly } from "../../parts/figures";
import { Problems, type Problem } from "../../parts/problems";
import { kebab } from "../../parts/word_ids";
import { patientOf } from "./animals";
import { giveUp } from "./form_over";
import { FormChoices, FormText, NotKept } from "../form_fields";
import { useKeptForm, type KeptForm } from "../kept_form";
import { WIRE_LISTS } from "../measure/fields";
import { amended } from "./patient_facts";
import { newestOf } from "./patient_meanwhile";
import { daysOf, ENDS, SIDES, siteOf, WHYS } from "./site_told";
import { withSite, type Place } from "./sites_not_used";
import { oneAtATime } from "../one_at_a_time";
import { StorageProblem, storageWord } from "../phone/storage_problem";

interface Props {
  card: PatientCard;
  day: number;
  /** The site that was tapped on the outline. */
  place: Place | undefined;
  onDone: () => void;
}

export function SiteForm({ card, day, place, onDone }: Props): JSX.Element | null {
  const chosen = { end: "open", ...(place ? { site: place.site, ...(place.site === "tail_base" ? {} : { side: place.side ?? "both" }) } : {}) };
  const form = useKeptForm(`site/${card.id}`, { texts: {}, chosen });
  return form ? <Fields form={form} card={card} day={day} onDone={onDone} /> : null;
}

function Fields({ form, card, day, onDone }: Omit<Props, "place"> & { form: KeptForm }): JSX.Element {
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const busy = useRef(false);

  async function save(): Promise<void> {
    const told = siteOf(form.head(), day);
    setProblems(Array.isArray(told) ? told : []);
    if (Array.isArray(told)) return;
    const newest = await newestOf(card); // a site told meanwhile stays
    const sites = withSite(patientOf(newest), told, day);
    if (!sites) return setProblems([{ field: "site", sentence: say("sites-full") }]);
    await form.file(amended(newest, { sites_not_used: sites }));
    onDone();
  }

  return (
    <form class="stack" noValidate onSubmit={(event) => { event.preventDefault(); oneAtATime(busy, save).catch((failure: unknown) => setTrouble(storageWord(failure))); }}>
      <Problems problems={problems} />
      <Where form={form} problems={problems} />
      <FormChoices form={form} field="why" label={say("site-why")} answers={WHYS.map((value) => ({ value, label: say(`site-why-${value}`) }))} problems={problems} />
      {form.shown.chosen["why"] !== "missing" && <End form={form} day={day} problems={problems} />}
      <NotKept form={form} />
      <StorageProblem word={trouble} />
      <button type="submit" class="button act wide">{say("site-save")}</button>
      <button type="button" class="button wide" onClick={() => void giveUp(form, onDone, (failure) => setTrouble(storageWord(failure)))}>{say("cancel")}</button>
    </form>
  );
}

function Where({ form, problems }: { form: KeptForm; problems: readonly Problem[] }): JSX.Element {
  const { site } = form.shown.chosen;
  return (
    <>
      <FormChoices form={form} field="site" label={say("field-site")} answers={WIRE_LISTS.site.map((value) => ({ value, label: say(`site-${kebab(value)}`) }))} problems={problems} />
      {site !== "tail_base" && (
        <FormChoices form={form} field="side" label={say("field-side")} answers={SIDES.map((value) => ({ value, label: say(`side-${value}`) }))} problems={problems} />
      )}
    </>
  );
}

function End({ form, day, problems }: { form: KeptForm; day: number; problems: readonly Problem[] }): JSX.Element {
  const { end = "open" } = form.shown.chosen;
  const days = daysOf(form.shown);
  const words = ENDS.map((value) => ({ value, label: ["open", "other"].includes(value) ? say(`site-end-${value}`) : say("site-end-days", { n: Number(value) }) }));
  return (
    <>
      <FormChoices form={form} field="end" label={say("site-end-ask")} answers={words} problems={problems} />
      {end === "other" && <FormText form={form} field="days" label={say("site-end-days-typed")} mode="numeric" problems={problems} />}
      {end !== "open" && days !== undefined && <p class="small">{say("site-end-day", { day: dayOnly(day + days) })}</p>}
    </>
  );
}
