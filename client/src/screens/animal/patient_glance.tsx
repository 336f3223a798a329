/* What to know of an animal before a hand goes near it: how it takes handling and what worked, where no cuff may go, that it bruises.
   Nothing is drawn where nothing is known. */
import type { JSX } from "preact";
import type { Patient1 as Patient } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { siteLine } from "./animal_words";
import { handlingWord } from "./animals";
import { sitesInForce } from "./sites_not_used";

interface Props {
  patient: Patient;
  /** Today, days since 1970-01-01. */
  day: number;
}

export function Glance({ patient, day }: Props): JSX.Element | null {
  const { handling, bruises } = patient;
  const sites = sitesInForce(patient, day);
  if (!handling && !bruises && sites.length === 0) return null;
  return (
    <section class="note stack glance" aria-labelledby="glance">
      <h2 class="unseen" id="glance">{say("glance-title")}</h2>
      {handling && <p class="handling">{handlingWord(handling.grade)}</p>}
      {handling?.trick && <p>{say("handling-worked", { trick: handling.trick })}</p>}
      {bruises && <p>{say("bruises-said")}</p>}
      {sites.length > 0 && (
        <div>
          <p>{say("glance-sites")}</p>
          <ul>
            {sites.map((site) => (
              <li key={`${site.site}-${site.side}-${site.why}`}>{siteLine(site, day)}</li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}
