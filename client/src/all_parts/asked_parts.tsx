/* The parts that ask and say: choices, checks, fields, pads, head, problems, state words, quiet times. Development only. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import "../contract/calm_words";
import "../contract/cuff_words";
import "../contract/help_words";
import { say } from "../contract/words";
import { BuzzChoice } from "../parts/buzz_choice";
import { Checks } from "../parts/checks";
import { Choices } from "../parts/choices";
import { HandSwitch } from "../parts/hand_switch";
import { Head } from "../parts/head";
import { KeptInput } from "../parts/kept_input";
import { NumberPad } from "../parts/number_pad";
import { Problems } from "../parts/problems";
import { QuietStrip, type QuietRow } from "../parts/quiet_strip";
import { StateWord, type State } from "../parts/state_word";
import { TextField } from "../parts/text_field";
import { VerdictShape, type VerdictKind } from "../parts/verdict_shape";
import { Shown } from "./shown";

const nothing = (): void => undefined;
const answers = (prefix: string, values: readonly string[]) => values.map((value) => ({ value, label: say(`${prefix}-${value}`) }));

function AskedOnce(): JSX.Element {
  const [chosen, choose] = useState<string | undefined>("tense");
  const [checked, check] = useState<readonly string[] | undefined>(["examined"]);
  const [side, chooseSide] = useState<string | undefined>(undefined);
  return (
    <>
      <Shown name="choices">
        <Choices
          name="demeanour" label={say("field-demeanour")} answers={answers("demeanour", ["sleepy", "calm", "tense", "fighting"])}
          value={chosen} onChoose={choose}
        />
        <Choices name="side" label={say("field-side")} answers={answers("side", ["left", "right"])} value={side} onChoose={chooseSide} />
        <Choices narrow name="unit" label={say("field-unit")} answers={answers("unit", ["cm", "mm"])} value="cm" onChoose={nothing} />
      </Shown>
      <Shown name="checks">
        <Checks
          name="circumstances" label={say("field-circumstances")} none={say("add-animal-species")} values={checked} onNone={() => check([])}
          answers={answers("circumstance", ["examined", "injected", "travelled"])} onToggle={(one) => check([one])}
        />
      </Shown>
    </>
  );
}

/** A field without text, with a hint and an echo, and with something wrong. */
function Fields(): JSX.Element {
  const [text, setText] = useState("13");
  const problems = [{ field: "hours", sentence: say("ask-number", { field: say("field-hours"), example: "2" }) }];
  return (
    <>
      <Shown name="text-field">
        <TextField id="empty" label={say("add-animal-name")} mode="text" text="" newest={() => ""} problems={[]} onText={nothing} />
        <TextField
          id="limb" label={say("field-circumference")} hint={say("circumference-hint")} echo={say("echo-mm", { n: `${text}0` })} mode="decimal"
          text={text} newest={() => text} problems={[]} onText={setText}
        />
        <TextField id="hours" label={say("field-hours")} mode="decimal" text="soon" newest={() => "soon"} problems={problems} onText={nothing} />
      </Shown>
      <Shown name="problems">
        <Problems problems={problems} />
      </Shown>
    </>
  );
}

function Pads(): JSX.Element {
  const [text, setText] = useState("14");
  const pad = { onDigit: (digit: string) => setText(text + digit), onKey: () => setText(""), onAdd: () => setText("") };
  return (
    <Shown name="number-pad">
      <div class="readings">
        <div class="pad-fields">
          <div class="pad-field" data-now="true">
            <label for="pad-systolic">{say("pad-systolic")}</label>
            <KeptInput id="pad-systolic" text={text} newest={() => text} mode="none" onText={setText} />
          </div>
        </div>
        <NumberPad several={false} begun={false} latest="set_aside" {...pad} />
      </div>
      <div class="readings">
        <NumberPad several begun latest="put_back" {...pad} />
      </div>
    </Shown>
  );
}

const STATES: readonly State[] = ["waiting", "sending", "stored", "held"];
const VERDICTS: readonly [VerdictKind, string][] = [
  ["steady", "verdict-steady"], ["falling", "verdict-falling"], ["scattered", "verdict-scattered"], ["too_few", "verdict-none"],
];

const quiet = (id: string, isOver: boolean, doubt?: string): QuietRow => ({
  id, href: "#/round", name: `Marrow ${id}`, isOver, left: "4:20", ready_at: "10:35", done_permille: isOver ? 1000 : 420, doubt,
});

function Told(): JSX.Element {
  return (
    <>
      <Shown name="state-word">
        {STATES.map((state) => <StateWord key={state} state={state} />)}
      </Shown>
      <Shown name="verdict-shape">
        {VERDICTS.map(([verdict, word]) => (
          <p class="verdict" key={verdict}>
            <VerdictShape verdict={verdict} /> {say(word)}
          </p>
        ))}
      </Shown>
      <Shown name="quiet-strip">
        <QuietStrip rows={[quiet("1", true), quiet("2", false, say("quiet-any-time")), quiet("3", false)]} most={2} />
        <QuietStrip rows={[quiet("4", true), quiet("5", true)]} slim />
      </Shown>
      <Shown name="buttons">
        <button type="button" class="button act wide">{say("pad-add")}</button>
        <button type="button" class="button wide">{say("file")}</button>
        <button type="button" class="button" disabled>{say("file")}</button>
        <button type="button" class="button" aria-pressed="true">{say("ready-yes")}</button>
        <a class="link" href="#/outbox">{say("outbox-title")}</a>
      </Shown>
    </>
  );
}

export function AskedParts(): JSX.Element {
  return (
    <>
      <Shown name="head">
        <Head unsent={2}>{say("round-title")}</Head>
        <HandSwitch />
        <BuzzChoice />
      </Shown>
      <AskedOnce />
      <Fields />
      <Pads />
      <Told />
    </>
  );
}
