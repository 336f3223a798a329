/* Where the cuff lies: each site with a small drawing, and its side. What is not to be used today is crossed out with its reason
   and is no answer, unless a person says to use it all the same. */
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { SiteDrawing } from "../../parts/drawings/site";
import { Guide } from "../../parts/guide";
import { dayOnly } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import type { SiteNotUsed } from "../animal/sites_not_used";
import { Fold, type Folds } from "./cuff_question";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, type CuffSet, type Open } from "./open";
import { barredSide, barredSite, hasSide, SIDES, SITES, type Side, type Site } from "./sites";

interface Props {
  open: Open;
  keeping: Keeping;
  folds: Folds;
  barred: readonly SiteNotUsed[];
}

/** "Wound, until 3 Mar 2026" */
export function reasonOf({ why, until_day }: SiteNotUsed): string {
  const reason = say(`site-why-${why}`);
  return until_day === undefined ? reason : say("not-used-until", { reason, day: dayOnly(until_day) });
}

/** The site and its side in words; undefined while neither is noted. */
export function placeWords({ site, side }: Pick<CuffSet, "site" | "side">): string | undefined {
  const words = [site && say(`site-${kebab(site)}`), side && hasSide(site) && say(`side-${side}`)].filter(Boolean);
  return words.length > 0 ? words.join(", ") : undefined;
}

/** A person said to use it all the same; `side` absent speaks of the whole site. */
function anyway(site: Site, side?: Side): string {
  return ["anyway", site, ...(side ? [side] : [])].join("_");
}

function useAnyway(open: Open, key: string): Open {
  return { ...open, texts: { ...open.texts, [key]: "yes" } };
}

function withSite(open: Open, site: Site): Open {
  const { side } = setNow(open);
  const now = hasSide(site) || side === undefined ? open : changed(open, "field-side", inSetNow(open, "side"), undefined);
  return changed(now, "field-site", inSetNow(now, "site"), site);
}

interface BarredProps {
  keeping: Keeping;
  what: string;
  why: SiteNotUsed;
  sayAnyway: string;
}

function Barred({ keeping, what, why, sayAnyway }: BarredProps): JSX.Element {
  return (
    <li class="barred">
      <span>
        <s>{what}</s> {reasonOf(why)}
      </span>
      <button type="button" class="button" aria-label={say("use-anyway-of", { what })} onClick={() => keeping.act((head) => useAnyway(head, sayAnyway))}>
        {say("use-anyway")}
      </button>
    </li>
  );
}

/** Site and side, folded to one line once both are noted. */
export function SiteChoice(props: Props): JSX.Element {
  const { open, folds } = props;
  return (
    <Fold folds={folds} question="site" label={say("field-site")} answer={placeWords(setNow(open))}>
      <SiteAndSide {...props} />
    </Fold>
  );
}

/** Both of them; where the site was taken over and its side alone is missing, the side, and the site as a line that opens again
    and hands the focus on to what it opened, since it is gone then. */
function SiteAndSide(props: Props): JSX.Element {
  const { open, keeping } = props;
  const { site } = setNow(keeping.head());
  const [isWhole, setWhole] = useState(() => !lacksSideAlone(setNow(keeping.head())));
  const place = useRef<HTMLDivElement>(null);
  const wasWhole = useRef(isWhole);
  useEffect(() => {
    const sites = [...(place.current?.querySelectorAll<HTMLInputElement>("input[name=site]") ?? [])];
    if (isWhole && !wasWhole.current) (sites.find((one) => one.checked) ?? sites[0])?.focus();
    wasWhole.current = isWhole;
  }, [isWhole]);
  return (
    <div class="stack" ref={place}>
      {isWhole || !site ? <Sites {...props} /> : (
        <button type="button" class="line" onClick={() => setWhole(true)}>
          <span class="line-label">{say("field-site")}</span> <strong class="line-answer">{say(`site-${kebab(site)}`)}</strong>
        </button>
      )}
      <Sides {...props} />
      {isWhole && <Guide step="site" species={open.measurement.species} method={setNow(open).method} />}
    </div>
  );
}

/** The site is noted, and has sides, and none of them is. */
function lacksSideAlone({ site, side }: CuffSet): boolean {
  return site !== undefined && hasSide(site) && side === undefined;
}

function Sites({ open, keeping, barred }: Props): JSX.Element {
  const { measurement: { species }, texts } = open;
  const head = setNow(keeping.head());
  const why = (site: Site): SiteNotUsed | undefined => (texts[anyway(site)] === "yes" ? undefined : barredSite(barred, site));
  return (
    <fieldset class="choices">
      <legend>{say("field-site")}</legend>
      <div class="site-row">
        {SITES[species].filter((site) => !why(site)).map((site) => (
          <label class="choice" key={site}>
            <input type="radio" name="site" value={site} checked={head.site === site} onChange={() => keeping.act((now) => withSite(now, site))} />
            <span>
              <SiteDrawing species={species} site={site} probe={head.method === "doppler"} />
              {say(`site-${kebab(site)}`)}
            </span>
          </label>
        ))}
      </div>
      <ul>
        {SITES[species].map((site) => {
          const reason = why(site);
          return reason && <Barred key={site} keeping={keeping} what={say(`site-${kebab(site)}`)} why={reason} sayAnyway={anyway(site)} />;
        })}
      </ul>
    </fieldset>
  );
}

function Sides({ open, keeping, barred }: Props): JSX.Element | null {
  const { site, side } = setNow(keeping.head());
  if (!hasSide(site)) return null;
  const whole = site && open.texts[anyway(site)] === "yes";
  const why = (one: Side): SiteNotUsed | undefined =>
    whole || (site && open.texts[anyway(site, one)] === "yes") ? undefined : barredSide(barred, site, one);
  return (
    <fieldset class="choices">
      <legend>{say("field-side")}</legend>
      <div class="choice-row">
        {SIDES.filter((one) => !why(one)).map((one) => (
          <label class="choice" key={one}>
            <input
              type="radio" name="side" value={one} checked={side === one}
              onChange={() => keeping.act((now) => changed(now, "field-side", inSetNow(now, "side"), one))}
            />
            <span>{say(`side-${one}`)}</span>
          </label>
        ))}
      </div>
      <ul>
        {SIDES.map((one) => {
          const reason = why(one);
          return reason && site && <Barred key={one} keeping={keeping} what={say(`side-${one}`)} why={reason} sayAnyway={anyway(site, one)} />;
        })}
      </ul>
    </fieldset>
  );
}
