/* What lies over the number pad: all readings, reasons for setting one aside, a question about an unusual value,
   a second tap that was held back, the reason for a new set, the pulse, the reason to stop. Each is left with one tap. */
import type { ComponentChildren, JSX } from "preact";
import { say } from "../../contract/words";
import { newId } from "../../offline/journal";
import { Guide } from "../../parts/guide";
import { WIRE_LISTS } from "./fields";
import { judged } from "./judged";
import type { Keeping } from "./keeping";
import { setNow, withoutSheet, type CuffSet, type Open, type Reading, type Sheet } from "./open";
import { StopHere } from "./stop_here";
import { PulseTap } from "./pulse_tapping";
import { addedNumbers, found, kept, newSet, setAside, shortOf } from "./series";
import { saying, standingWords, valueOf } from "./wording";

interface Props<S> {
  open: Open;
  sheet: S;
  keeping: Keeping;
}

function Key({ children, act, onClick }: { children: ComponentChildren; act?: boolean; onClick: () => void }): JSX.Element {
  return (
    <button type="button" class={act ? "button act key" : "button key"} onClick={onClick}>
      {children}
    </button>
  );
}

function BackToKeys({ keeping }: { keeping: Keeping }): JSX.Element {
  return <Key onClick={() => keeping.act(withoutSheet)}>{say("readings-keys")}</Key>;
}

/** Draws the sheet that is open. */
export function ReadingsSheet({ open, sheet, keeping }: Props<Sheet>): JSX.Element {
  return (
    <div class="sheet">
      {sheet.kind === "list" && <AllReadings open={open} sheet={sheet} keeping={keeping} />}
      {sheet.kind === "reasons" && <Reasons open={open} sheet={sheet} keeping={keeping} />}
      {sheet.kind === "unlikely" && <Unlikely open={open} sheet={sheet} keeping={keeping} />}
      {sheet.kind === "second_tap" && <SecondTap open={open} sheet={sheet} keeping={keeping} />}
      {sheet.kind === "new_set" && <WhyNewSet open={open} keeping={keeping} />}
      {sheet.kind === "stop" && <StopHere keeping={keeping} />}
      {sheet.kind === "pulse" && <PulseTap open={open} sheet={sheet} keeping={keeping} />}
    </div>
  );
}

function AllReadings({ open, sheet, keeping }: Props<Extract<Sheet, { kind: "list" }>>): JSX.Element {
  const assessment = judged(open);
  return (
    <>
      <p class="small">{say("reading-pick")}</p>
      {open.measurement.sets.map((set, at) => (
        <div key={at}>
          {open.measurement.sets.length > 1 && <h2>{say("set-number", { n: String(at + 1) })}</h2>}
          <ol class="list taken">
            {set.readings.map((reading, place) => (
              <OneReading
                key={reading.id}
                reading={reading}
                n={place + 1}
                standing={standingWords(assessment, at, reading)}
                chosen={sheet.id === reading.id}
                keeping={keeping}
              />
            ))}
          </ol>
        </div>
      ))}
      <Guide step="readings" species={open.measurement.species} method={setNow(open).method} />
      <BackToKeys keeping={keeping} />
    </>
  );
}

interface OneProps {
  reading: Reading;
  n: number;
  standing: string;
  chosen: boolean;
  keeping: Keeping;
}

function OneReading({ reading, n, standing, chosen, keeping }: OneProps): JSX.Element {
  const value = valueOf(reading);
  const { id } = reading;
  return (
    <li>
      <button
        type="button"
        class="row"
        aria-pressed={chosen}
        aria-label={say("reading-in-list", { n: String(n), value, standing })}
        onClick={() => keeping.act((head) => ({ ...head, sheet: chosen ? { kind: "list" } : { kind: "list", id } }))}
      >
        <span class="small">{n}</span>{" "}
        <span class={reading.beyond ? "value words" : "value"}>{value}</span>{" "}
        <span>{standing}</span>
      </button>
      {chosen && !reading.set_aside && (
        <Key onClick={() => keeping.act((head) => ({ ...head, sheet: { kind: "reasons", id } }))}>{say("set-aside")}</Key>
      )}
      {chosen && reading.set_aside && (
        <Key onClick={() => keeping.act((head) => setAside(head, id, undefined, value))}>{say("put-back")}</Key>
      )}
    </li>
  );
}

/** Reasons that only a machine, or only an ear and a gauge, can give. */
const ONLY = {
  oscillometric: ["device_code", "pulse_differs"],
  doppler: ["sound_lost", "released_too_fast", "pumped_too_little"],
} as const satisfies Record<CuffSet["method"], readonly NonNullable<Reading["set_aside"]>[]>;

/** The reasons of the method; a machine that gave no value has most often shown a code instead. */
function reasonsOf(method: CuffSet["method"], reading: Reading | undefined): NonNullable<Reading["set_aside"]>[] {
  const others: readonly string[] = ONLY[method === "doppler" ? "oscillometric" : "doppler"];
  const reasons = WIRE_LISTS.set_aside.filter((reason) => !others.includes(reason));
  return reading?.beyond === "no_value" ? ["device_code", ...reasons.filter((reason) => reason !== "device_code")] : reasons;
}

function Reasons({ open, sheet, keeping }: Props<Extract<Sheet, { kind: "reasons" }>>): JSX.Element {
  const place = found(open, sheet.id);
  const reading = place?.reading;
  const value = reading ? valueOf(reading) : "";
  const method = (place && open.measurement.sets[place.set]?.method) ?? setNow(open).method;
  return (
    <>
      <h2>{say("set-aside-title", { value })}</h2>
      <div class="reasons">
        {reasonsOf(method, reading).map((reason) => (
          <Key key={reason} onClick={() => keeping.act((head) => setAside(head, sheet.id, reason, value))}>
            {say(`set-aside-${reason.replaceAll("_", "-")}`)}
          </Key>
        ))}
      </div>
      <BackToKeys keeping={keeping} />
    </>
  );
}

function Unlikely({ sheet, keeping }: Props<Extract<Sheet, { kind: "unlikely" }>>): JSX.Element {
  return (
    <div role="alert" class="stack">
      {sheet.questions.map((question) => (
        <p key={question.word + String(question.facts["field"])}>{saying(question)}</p>
      ))}
      <Key
        onClick={() => {
          const [at_ms, id] = [Date.now(), newId()];
          keeping.act((head) => kept(head, at_ms, id));
        }}
      >
        {say("unlikely-keep")}
      </Key>
      <Key onClick={() => keeping.act(withoutSheet)}>{say("unlikely-fix")}</Key>
    </div>
  );
}

function SecondTap({ sheet, keeping }: Props<Extract<Sheet, { kind: "second_tap" }>>): JSX.Element {
  return (
    <div role="alert" class="stack">
      <p>{say("second-tap", { value: shortOf(sheet.numbers) })}</p>
      <Key
        onClick={() => {
          const [at_ms, id] = [Date.now(), newId()];
          keeping.act((head) => addedNumbers(head, sheet.numbers, at_ms, id));
        }}
      >
        {say("second-tap-add")}
      </Key>
      <Key onClick={() => keeping.act(withoutSheet)}>{say("second-tap-no")}</Key>
    </div>
  );
}

/** The name of a choice says what is meant; another method is named. */
function WhyNewSet({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const other = setNow(open).method === "doppler" ? "oscillometric" : "doppler";
  return (
    <>
      <h2>{say("new-set-title")}</h2>
      {(["moved", "changed", "site", "method"] as const).map((why) => (
        <Key key={why} onClick={() => keeping.act((head) => newSet(head, why))}>
          {say(`new-set-${why}`, { method: say(`method-${other}`) })}
        </Key>
      ))}
      <BackToKeys keeping={keeping} />
    </>
  );
}
