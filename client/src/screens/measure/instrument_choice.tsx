/* Gauge and instrument. The bag offers what it holds by one tap; anything else is typed. That a machine is not validated for this
   species is said beside it, as far as the bag says, and blocks nothing. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { TextField } from "../../parts/text_field";
import type { BagBody } from "../bag/bag_in_use";
import { gaugeNames, instrumentsOf, notValidated } from "./carried";
import { Fold, Question, type Folds } from "./cuff_question";
import { withInstrument } from "./fields";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, type Open } from "./open";
import { problemsToShow } from "./part_problems";
import { done, type Patch } from "./undo";
import { saying } from "./wording";

interface Props {
  open: Open;
  keeping: Keeping;
  folds: Folds;
  bag: BagBody | undefined;
}

const GAUGES = ["aneroid", "digital"] as const;

/** Aneroid or digital, what the bag holds first. */
export function GaugeChoice({ keeping, folds, bag }: Omit<Props, "open">): JSX.Element {
  const names = (type: string): string[] => gaugeNames(bag, type as (typeof GAUGES)[number]);
  const inBag = [...GAUGES].sort((one, other) => Number(names(other).length > 0) - Number(names(one).length > 0));
  const labelOf = (type: string): string => {
    const found = names(type);
    return found.length > 0 ? say("gauge-named", { type: say(`gauge-${type}`), names: found.join(", ") }) : say(`gauge-${type}`);
  };
  return <Question keeping={keeping} folds={folds} field="gauge" answers={inBag} labelOf={labelOf} />;
}

const OTHER = "other:";

function taken(open: Open, name: string): Open {
  const patches: Patch[] = [{ at: inSetNow(open, "instrument"), to: name }, { at: ["texts", "instrument"], to: name }, { at: ["texts", "instrument_other"], to: "" }];
  return done(open, "act-choice", { field: "field-instrument" }, patches);
}

function another(open: Open): Open {
  const asked = { ...open, texts: { ...open.texts, instrument: "", instrument_other: "yes" } };
  return changed(asked, "field-instrument", inSetNow(open, "instrument"), undefined);
}

/** The machine or the probe. */
export function InstrumentChoice({ open, keeping, folds, bag }: Props): JSX.Element {
  const set = setNow(open);
  const head = keeping.head();
  const names = [...new Set(instrumentsOf(bag, set.method).map(({ name }) => name))];
  const named = setNow(head).instrument;
  const isOther = names.length === 0 || head.texts["instrument_other"] === "yes" || (named !== undefined && !names.includes(named));
  const unsure = notValidated(bag, set, open.measurement.species);
  const label = say(`field-instrument-${set.method}`);
  return (
    <Fold folds={folds} question="instrument" label={label} answer={set.instrument} note={unsure && saying(unsure)}>
      {names.length > 0 && (
        <Choices
          name="instrument"
          label={label}
          answers={[...names, OTHER].map((value) => ({ value, label: value === OTHER ? say("instrument-other") : value }))}
          value={isOther ? OTHER : named}
          onChoose={(name) => keeping.act((now) => (name === OTHER ? another(now) : taken(now, name)))}
        />
      )}
      {isOther && (
        <TextField
          id="instrument"
          label={say("field-instrument")}
          hint={say("instrument-hint")}
          mode="text"
          text={open.texts["instrument"] ?? set.instrument ?? ""}
          newest={() => keeping.head().texts["instrument"] ?? setNow(keeping.head()).instrument ?? ""}
          problems={problemsToShow(open)}
          onText={(text) => keeping.act((now) => withInstrument(now, text))}
        />
      )}
    </Fold>
  );
}
