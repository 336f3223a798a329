/* Whole screens in states that no hand can bring about: an entry that needs a person, a store that refuses, a newer build, a phone the
   server does not know. `?screen=name` draws one of them, alone. Development only; everything on them is invented. */
import type { JSX } from "preact";
import { PhoneTrouble, type OutboxEntry, type Phone, type Status } from "../offline/journal";
import { judged } from "../screens/measure/judged";
import { Measure } from "../screens/measure/measure";
import { draftOf } from "../screens/measure/open";
import { Outbox } from "../screens/outbox/outbox";
import { update } from "../screens/phone/update";
import { UpdateLine } from "../screens/phone/update_line";
import { usePhoneOf } from "../screens/place";
import { Round } from "../screens/round/round";
import { letterOf, openWith, phoneWith } from "./standing_in";

const DOG = { species: "dog", taken: [150, 146, 145, 147, 144, 148] } as const;
const ANIMALS = ["Marrow", "Quill", "Burdock", "Pepperpot", "Ember", "Thimble"].map((name) => letterOf("patient", { species: "dog", name }));

function entry(number: number, told: Partial<OutboxEntry>): OutboxEntry {
  return { number, id: `entry-${number}`, practice: "practice", state: "waiting", tries: 0, ...told };
}

/** One entry in each state, those that need a person among the others. */
function entries(): OutboxEntry[] {
  const measured = openWith(DOG);
  const assessment = judged(measured);
  const differing = judged(openWith({ ...DOG, taken: [150, 166, 165, 167, 164, 168] }));
  const visit = letterOf("measurement", { ...measured.measurement, patient: ANIMALS[1]?.id }, { rules: "v1", assessment });
  return [
    entry(1, { state: "stored", position: 1, letter: ANIMALS[0] }),
    entry(2, { state: "refused", code: "id_conflict", path: "/id", letter: visit }),
    entry(3, { state: "held", code: "device_revoked", letter: ANIMALS[2] }),
    entry(4, { state: "held", code: "schema_unknown", path: "/schema", letter: ANIMALS[3] }),
    entry(5, { state: "waiting", code: "set_aside", tries: 5, letter: ANIMALS[4] }),
    entry(6, { state: "waiting", code: "unreadable" }),
    entry(7, { state: "stored", position: 2, letter: visit, serverAssessment: differing }),
    entry(8, { letter: ANIMALS[5] }),
  ];
}

const CARDS = ANIMALS.map((letter) => ({ id: letter.id, letter, inRecord: true, amendments: 0, visits: 0 }));

function listing(status: Partial<Status>): Phone {
  return phoneWith({ outbox: async () => entries(), patients: async () => CARDS }, { unsent: 3, needsYou: 5, ...status });
}

/** A measurement whose every write fails. */
function refusing(): Phone {
  const draft = draftOf({ ...openWith(DOG), part: "readings", finished: false }, Date.now());
  const refuse = async (): Promise<never> => { throw new PhoneTrouble("full"); };
  return phoneWith({ drafts: async () => [draft], keepDraft: refuse, dropDraft: refuse, file: refuse }, { storage: "full" });
}

const SCREENS: Record<string, { phone: () => Phone; draw: () => JSX.Element }> = {
  "outbox-needs-you": { phone: () => listing({}), draw: () => <Outbox /> },
  "outbox-not-ours": { phone: () => listing({ network: "not_ours", nextTryMs: Date.now() + 60_000, unsentElsewhere: 2 }), draw: () => <Outbox /> },
  "round-sign-in-to-send": { phone: () => listing({ signInNeeded: true, signInToSend: true, network: "practice_closed" }), draw: () => <Round /> },
  "round-storage-full": { phone: () => listing({ storage: "full" }), draw: () => <Round /> },
  "measure-not-kept": { phone: refusing, draw: () => <Measure id="draft" /> },
};

/** The screen of this name with an offer of a newer build above it, as there may be one above any. */
export function WholeScreen({ name }: { name: string }): JSX.Element | null {
  const screen = SCREENS[name];
  if (!screen) return null;
  return (
    <>
      <UpdateLine />
      {screen.draw()}
    </>
  );
}

/** What the screen of this name stands on; done before it is drawn. */
export function standFor(name: string): void {
  const screen = SCREENS[name];
  if (!screen) throw new Error(`no such screen: ${name}; there are ${Object.keys(SCREENS).join(", ")}`);
  usePhoneOf(screen.phone());
  update.value = () => undefined;
}
