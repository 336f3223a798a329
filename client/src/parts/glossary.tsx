/* What the words of the visit mean, with a drawing where one says more. Must not advise. */
import type { JSX } from "preact";
import { sayGuide } from "../contract/guide_words";
import { say } from "../contract/words";
import { SITES } from "./drawings/body";
import type { Species } from "./drawings/drawing";
import { PostureDrawing, POSTURES } from "./drawings/posture";
import { SiteDrawing } from "./drawings/site";
import { kebab } from "./word_ids";

interface Term {
  name: string;
  about: string;
  drawing?: JSX.Element;
}

const DEMEANOURS = ["sleepy", "calm", "tense", "fighting"] as const;
const OF_READINGS = ["agree", "coming-down", "scattered"] as const;
const OF_FIRMNESS = ["firm", "with-care", "not-placed"] as const;

/** A term that the screens use as a label, under that label. */
const labelled = (id: string, drawing?: JSX.Element): Term => ({ name: say(id), about: sayGuide(`about-${id}`), ...(drawing && { drawing }) });

const own = (id: string): Term => ({ name: sayGuide(`glossary-${id}`), about: sayGuide(`about-${id}`) });

function groups(species: Species): Readonly<Record<string, readonly Term[]>> {
  return {
    sites: SITES.map((site) => labelled(`site-${kebab(site)}`, <SiteDrawing species={species} site={site} />)),
    postures: POSTURES.map((posture) => labelled(`posture-${kebab(posture)}`, <PostureDrawing species={species} posture={posture} />)),
    demeanour: DEMEANOURS.map((grade) => labelled(`demeanour-${grade}`)),
    readings: OF_READINGS.map(own),
    firmness: OF_FIRMNESS.map(own),
  };
}

/** All groups, one under the other; headings of level 3. */
export function Glossary({ species }: { species: Species }): JSX.Element {
  return (
    <div class="glossary">
      {Object.entries(groups(species)).map(([group, terms]) => (
        <section key={group}>
          <h3>{sayGuide(`glossary-${group}`)}</h3>
          <dl>
            {terms.map(({ name, about, drawing }) => (
              <div class="term" key={name}>
                <dt>{name}</dt>
                <dd class={drawing && "drawn"}>
                  {about}
                  {drawing}
                </dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </div>
  );
}
