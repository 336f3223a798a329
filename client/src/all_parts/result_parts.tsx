/* The result in each category, without one, with bounds and with what bends it; and the sheets over the number pad. Development only.
   Each is worked out by the rules themselves from readings that were invented for it. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { judged } from "../screens/measure/judged";
import { Differs } from "../screens/measure/both_results";
import type { Sheet } from "../screens/measure/open";
import { ReadingsSheet } from "../screens/measure/readings_sheet";
import { ResultPart } from "../screens/measure/result_part";
import { WhyNotToday } from "../screens/measure/not_today";
import { HelpFirst } from "../screens/measure/help_first";
import { StorageProblem } from "../screens/phone/storage_problem";
import { Shown } from "./shown";
import { keepingFor, openWith, type Visit } from "./standing_in";

const around = (mmhg: number): number[] => [mmhg + 8, mmhg, mmhg - 1, mmhg + 1, mmhg - 2, mmhg + 2];

const RESULTS: Record<string, Visit> = {
  minimal: { species: "dog", taken: around(128) },
  low: { species: "dog", taken: around(146) },
  moderate: { species: "cat", taken: around(168) },
  high: { species: "cat", taken: around(198) },
  "near-an-edge": { species: "dog", taken: around(159) },
  "with-care": { species: "cat", taken: around(166), measured: { demeanour: "fighting", rest_s: 60 }, set: { cuff_width_mm: 24 } },
  scattered: { species: "cat", taken: [236, 190, 238, 192, 234, 191, 236] },
  "above-gauge": { species: "cat", taken: [{ beyond: "above_gauge" }, { beyond: "above_gauge" }, { beyond: "above_gauge" }] },
  "coming-down": { species: "cat", taken: [190, 184, 176, 168, 160, 154, 148] },
  "too-few": { species: "dog", taken: [150, 142] },
  "low-pressure": { species: "dog", taken: around(72) },
  sedated: { species: "dog", taken: around(152), measured: { state: "sedated" } },
  young: { species: "dog", taken: around(120), measured: { age_months: 5 } },
  "no-sound": { species: "dog", taken: [{ beyond: "no_sound" }, { beyond: "no_sound" }] },
  machine: {
    species: "dog", set: { method: "oscillometric" },
    taken: around(140).map((systolic_mmhg) => ({ systolic_mmhg, mean_mmhg: systolic_mmhg - 38, diastolic_mmhg: systolic_mmhg - 60, pulse_bpm: 98 })),
  },
  "set-aside": { species: "dog", taken: [150, 142, 138, { systolic_mmhg: 176, set_aside: "moved" }, 140, 136, 144] },
  "not-today": { species: "cat", taken: [], measured: { outcome: { kind: "not_today", why: "bite_or_scratch" } } },
};

function Result({ name, visit }: { name: string; visit: Visit }): JSX.Element {
  const open = openWith(visit);
  return (
    <Shown name={`result-${name}`}>
      <ResultPart open={open} keeping={keepingFor(open)} />
    </Shown>
  );
}

const SHEETS: readonly Sheet[] = [
  { kind: "list", id: "r2" }, { kind: "reasons", id: "r2" }, { kind: "unlikely", questions: [{ word: "impossible-order", facts: { systolic: 120, mean: 130, diastolic: 85 } }] },
  { kind: "second_tap", numbers: { systolic_mmhg: 142 } }, { kind: "new_set" }, { kind: "pulse" }, { kind: "stop" },
];

const STORAGE = ["storage-full", "storage-lost", "storage-blocked", "storage-reload-needed", "phone-too-large", "kept-not"];

function Sheets(): JSX.Element {
  const open = openWith({ species: "dog", taken: around(146) });
  const keeping = keepingFor(open);
  return (
    <>
      {SHEETS.map((sheet) => (
        <Shown key={sheet.kind} name={`sheet-${sheet.kind}`}>
          <div class="readings">
            <ReadingsSheet open={open} sheet={sheet} keeping={keeping} />
          </div>
        </Shown>
      ))}
      <Shown name="sheet-not_today">
        <WhyNotToday open={open} keeping={keeping} />
      </Shown>
      <Shown name="help-first">
        <HelpFirst open={open} keeping={keeping} />
      </Shown>
    </>
  );
}

/** `only` leaves the others out, since a page holds one region named Result. */
export function ResultParts({ only }: { only: string | null }): JSX.Element {
  const shown = Object.entries(RESULTS).filter(([name]) => only === null || only === name);
  const [one, other] = [judged(openWith({ species: "dog", taken: around(139) })), judged(openWith({ species: "dog", taken: around(140) }))];
  return (
    <>
      <Shown name="differs">
        <p>{say("differs-stands")}</p>
        <Differs phone={one} server={other} measurement={undefined} />
      </Shown>
      <Shown name="storage-problems">
        {STORAGE.map((word) => <StorageProblem key={word} word={word} />)}
      </Shown>
      <Sheets />
      {shown.map(([name, visit]) => <Result key={name} name={name} visit={visit} />)}
    </>
  );
}
