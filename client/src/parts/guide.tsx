/* A folded *How to* for one step of the visit: our drawings and a few sentences. Must not ask or record anything. */
import type { ComponentChildren, JSX } from "preact";
import { sayGuide } from "../contract/guide_words";
import { ruleSet } from "../contract/rule_documents";
import { say } from "../contract/words";
import { SITES, type Site } from "./drawings/body";
import { CuffDrawing, TapeDrawing } from "./drawings/cuff";
import type { Species } from "./drawings/drawing";
import { LevelDrawing, LEVELS } from "./drawings/level";
import { type Posture, PostureDrawing, POSTURES } from "./drawings/posture";
import { RestraintDrawing } from "./drawings/restraint";
import { SiteDrawing } from "./drawings/site";
import { guideSentences, type GuideMethod, type GuideStep } from "./guide_card";
import { kebab } from "./word_ids";

interface Props {
  step: GuideStep;
  species: Species;
  /** Left out while it is not known: then only what holds for both is said. */
  method?: GuideMethod;
  /** Shows the drawing of this site alone. */
  site?: Site;
  /** Shows the drawing of this posture alone. */
  posture?: Posture;
}

/** A drawing with its caption below; the caption is what a screen reader says. */
function Shown({ caption, children }: { caption: string; children: ComponentChildren }): JSX.Element {
  return (
    <figure class="shown">
      {children}
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

/** Narrower and wider than any usable cuff by as much as a usable one may vary, so that the drawing tells them apart. */
function cuffShares(species: Species): Record<"narrow" | "fitting" | "wide", number> {
  const { target_permille, usable_permille } = ruleSet().documents.cuff.numbers;
  const [least = 0, most = 0] = usable_permille[species];
  return { narrow: least / 2, fitting: target_permille[species], wide: most + least / 2 };
}

function CuffShown({ species }: Props): JSX.Element {
  return (
    <>
      <Shown caption={sayGuide("guide-tape")}>
        <TapeDrawing />
      </Shown>
      {Object.entries(cuffShares(species)).map(([name, share]) => (
        <Shown key={name} caption={sayGuide(`guide-cuff-${name}`)}>
          <CuffDrawing share_permille={share} />
        </Shown>
      ))}
    </>
  );
}

function SitesShown({ species, method, site }: Props): JSX.Element {
  return (
    <>
      {(site ? [site] : SITES).map((name) => (
        <Shown key={name} caption={say(`site-${kebab(name)}`)}>
          <SiteDrawing species={species} site={name} probe={method !== "oscillometric"} />
        </Shown>
      ))}
    </>
  );
}

function PosturesShown({ species, posture }: Props): JSX.Element {
  return (
    <>
      {(posture ? [posture] : POSTURES).map((name) => (
        <Shown key={name} caption={say(`posture-${kebab(name)}`)}>
          <PostureDrawing species={species} posture={name} />
        </Shown>
      ))}
    </>
  );
}

function LevelsShown({ species }: Props): JSX.Element {
  return (
    <>
      {LEVELS.map((level) => (
        <Shown key={level} caption={say(`height-${level}`)}>
          <LevelDrawing species={species} level={level} />
        </Shown>
      ))}
    </>
  );
}

function HoldsShown({ species }: Props): JSX.Element {
  return (
    <>
      {(["basket", "towel"] as const).map((kind) => (
        <Shown key={kind} caption={say(`restraint-${kind}`)}>
          <RestraintDrawing species={species} kind={kind} />
        </Shown>
      ))}
    </>
  );
}

/** The forearm of a dog, the upper arm of a cat, unless the site is known. */
function ReadingShown(props: Props): JSX.Element {
  return <SitesShown {...props} site={props.site ?? (props.species === "cat" ? "above_elbow" : "forearm")} />;
}

const SHOWN: Partial<Readonly<Record<GuideStep, (props: Props) => JSX.Element>>> = {
  calm: HoldsShown,
  cuff: CuffShown,
  site: SitesShown,
  posture: PosturesShown,
  level: LevelsShown,
  readings: ReadingShown,
};

/** Folded at first. `step` and `species` choose the words, `method` adds to them. */
export function Guide(props: Props): JSX.Element {
  const { step, species, method } = props;
  const Drawings = SHOWN[step];
  return (
    <details class="more guide">
      <summary>{sayGuide(`guide-title-${step}`)}</summary>
      {Drawings && (
        <div class={step === "cuff" ? "shown-row pairs" : "shown-row"}>
          <Drawings {...props} />
        </div>
      )}
      <ul>
        {guideSentences(step, species, method).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </details>
  );
}
