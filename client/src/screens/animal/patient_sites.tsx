/* Where no cuff may go: the outline with its sites, those in force with a way to end each, those that are over, and a form for a new one.
   The outline is a second way to the same answers; nobody needs to see it. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { PatientCard } from "../../offline/journal";
import { Body, SITE_PLACES, type Mark } from "../../parts/drawings/body";
import { placeOf, siteLine } from "./animal_words";
import { patientOf } from "./animals";
import { amended } from "./patient_facts";
import { SiteForm } from "./patient_site_form";
import { thePhone } from "../place";
import { isForGood, sitesInForce, sitesPast, withoutSite, type Place, type SiteNotUsed } from "./sites_not_used";
import { StorageProblem, storageWord } from "../phone/storage_problem";

interface Props {
  card: PatientCard;
  /** Today, days since 1970-01-01. */
  day: number;
  /** The form is open: a site was tapped, or a killed tab left it half done. */
  begun: boolean;
}

/** A mark on the outline for each site in force; one without a side is drawn on both. */
export function marksOf(sites: readonly SiteNotUsed[]): Mark[] {
  return sites.flatMap(({ site, side }) => {
    if (side || site === "tail_base") return [{ site, state: "off" as const, ...(side ? { side } : {}) }];
    return (["left", "right"] as const).map((one) => ({ site, side: one, state: "off" as const }));
  });
}

export function Sites({ card, day, begun }: Props): JSX.Element {
  const patient = patientOf(card);
  const [tapped, setTapped] = useState<Place | undefined>(undefined);
  const [open, setOpen] = useState(begun);
  const past = sitesPast(patient, day);
  const tap = (place: Place): void => {
    setTapped(place);
    setOpen(true);
  };
  if (open) {
    const chosen: Mark[] = tapped ? [{ ...tapped, state: "now" }] : [];
    return (
      <div class="stack">
        <Body species={patient.species} marks={[...marksOf(sitesInForce(patient, day)), ...chosen]} />
        <SiteForm card={card} day={day} place={tapped} onDone={() => setOpen(false)} />
      </div>
    );
  }
  return (
    <div class="stack">
      <Outline card={card} day={day} onTap={tap} />
      <InForce card={card} day={day} />
      <button type="button" class="button wide" onClick={() => setOpen(true)}>{say("site-add")}</button>
      {past.length > 0 && (
        <details class="more">
          <summary>{say("sites-past", { n: past.length })}</summary>
          <ul class="stack small">
            {past.map((site, at) => <li key={at}>{siteLine(site, day)}</li>)}
          </ul>
        </details>
      )}
    </div>
  );
}

/** The outline, and over each site a button that opens the form at it. */
function Outline({ card, day, onTap }: { card: PatientCard; day: number; onTap: (place: Place) => void }): JSX.Element {
  const patient = patientOf(card);
  const sites = sitesInForce(patient, day);
  return (
    <div class="outline">
      <Body species={patient.species} marks={marksOf(sites)} />
      {SITE_PLACES[patient.species].map(({ site, side, x, y }) => (
        <button
          key={`${site}-${side}`}
          type="button"
          class="spot"
          style={{ insetInlineStart: `${x / 10}%`, insetBlockStart: `${y / 10}%` }}
          aria-label={say("site-tap", { place: placeOf({ site, ...(side ? { side } : {}) }) })}
          onClick={() => onTap({ site, ...(side ? { side } : {}) })}
        />
      ))}
    </div>
  );
}

const endWord = (site: SiteNotUsed): string => (isForGood(site) ? "site-mistake" : "site-end");

function InForce({ card, day }: { card: PatientCard; day: number }): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const patient = patientOf(card);
  const sites = sitesInForce(patient, day);
  const end = (site: SiteNotUsed): void => {
    const parts = amended(card, { sites_not_used: withoutSite(patient, site, day) });
    thePhone().file(parts).then(() => setTrouble(undefined), (failure: unknown) => setTrouble(storageWord(failure)));
  };
  return (
    <>
      <StorageProblem word={trouble} />
      {sites.length === 0 && <p>{say("sites-none")}</p>}
      <ul class="list">
        {sites.map((site) => (
          <li class="stack" key={`${site.site}-${site.side}-${site.why}`}>
            <p>{siteLine(site, day)}</p>
            <button type="button" class="button" aria-label={say("site-end-of", { place: placeOf(site), act: say(endWord(site)) })} onClick={() => end(site)}>
              {say(endWord(site))}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
