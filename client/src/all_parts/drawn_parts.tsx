/* The parts that are drawn: row of readings, line of bands, icons, bodies, sites, postures, cuffs; guides and the glossary. Development only. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { BandLine } from "../parts/band_line";
import { Body, type Mark } from "../parts/drawings/body";
import { CuffDrawing, TapeDrawing } from "../parts/drawings/cuff";
import type { Species } from "../parts/drawings/drawing";
import { Icon, ICON_NAMES } from "../parts/drawings/icons";
import { Glossary } from "../parts/glossary";
import { Guide } from "../parts/guide";
import { GUIDE_STEPS } from "../parts/guide_card";
import { Series } from "../parts/series";
import { seriesShape, type Revealed } from "../parts/series_shape";
import { RULES } from "../screens/measure/judged";
import { Shown } from "./shown";

const BOTH: readonly Species[] = ["dog", "cat"];
const EDGES = Object.values(RULES.documents.category.numbers.from_mmhg);
const MARKS: readonly Mark[] = [{ site: "forearm", side: "left", state: "now" }, { site: "above_hock", side: "right", state: "off" }];

function Row({ values, revealed }: { values: readonly (number | undefined)[]; revealed?: Revealed }): JSX.Element {
  const taken = values.map((systolic_mmhg, at) => ({
    id: String(at), counts: at > 0, ...(systolic_mmhg === undefined ? { word: say("beyond-no-value") } : { systolic_mmhg }),
  }));
  const label = say("row-title", { values: values.filter(Boolean).join(", ") });
  return <Series shape={seriesShape(taken, 336, revealed ? { revealed } : {})} label={label} />;
}

/** In the order of the row of readings, then the mean among its edges. */
export function DrawnParts(): JSX.Element {
  return (
    <>
      <Shown name="series">
        <Row values={[142]} />
        <Row values={[168, 142, 138, undefined, 140, 136]} />
        <Row values={[168, 142, 138, 140, 136, 144]} revealed={{ mean: 140, half_width: 4, edges: EDGES }} />
        <Row values={Array.from({ length: 24 }, (_, at) => 150 - (at % 7) * 3)} />
      </Shown>
      <Shown name="band-line">
        <BandLine mean={1280} edges={EDGES} label={say("band-line", { mean: "128" })} />
        <BandLine mean={1580} half_width={60} edges={EDGES} label={say("band-line", { mean: "158" })} />
      </Shown>
      <Shown name="icons">
        <p class="icons">{ICON_NAMES.map((name) => <Icon key={name} name={name} />)}</p>
      </Shown>
      <Shown name="body">
        {BOTH.map((species) => (
          <Body key={species} species={species} label={say(`species-${species}`)} marks={MARKS} />
        ))}
      </Shown>
      <Shown name="cuff-drawings">
        <TapeDrawing />
        <CuffDrawing share_permille={400} />
      </Shown>
      <Shown name="guide">
        {GUIDE_STEPS.map((step) => <Guide key={step} step={step} species="dog" method="oscillometric" />)}
        {GUIDE_STEPS.map((step) => <Guide key={step} step={step} species="cat" method="doppler" />)}
      </Shown>
      <Shown name="glossary">
        <Glossary species="dog" />
      </Shown>
    </>
  );
}
