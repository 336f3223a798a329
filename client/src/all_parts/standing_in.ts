/* What the parts on the page of all parts stand on: a phone without a record and visits that nobody took. Development only.
   Must not be imported by the app. Everything here is invented, and no figure is a rule's. */
import { signal } from "@preact/signals";
import type { Letter, Phone, Status } from "../offline/journal";
import { keeperOf } from "../screens/measure/keeper";
import { keepingOf, troubleCode, type Keeping } from "../screens/measure/keeping";
import { started, type CuffSet, type Open, type Reading } from "../screens/measure/open";

const NEVER = new Promise<never>(() => undefined);
const STATUS = { unsent: 0, needsYou: 0, unsentElsewhere: 0, sending: false, signInNeeded: false, signInToSend: false };

/** Answers every read with nothing and never finishes a write. */
export const EMPTY_PHONE = {
  who: signal(undefined), status: signal(STATUS), changed: signal(0),
  drafts: async () => [], forms: async () => [], outbox: async () => [], patients: async () => [], bags: async () => [], visits: async () => [],
  recall: async () => undefined, keepDraft: async () => undefined, remember: async () => undefined, dropDraft: () => NEVER, file: () => NEVER,
  signIn: () => NEVER, signOut: () => NEVER, syncNow: async () => undefined, close: () => undefined,
} as unknown as Phone;

const WHO = { practice: "practice", practiceName: "Hedgerow", person: "person", personName: "Wren", role: "veterinarian", device: "phone" };

/** The empty phone with somebody signed in, some of its answers replaced, and this status. */
export function phoneWith(answers: Partial<Phone>, status: Partial<Status>): Phone {
  return { ...EMPTY_PHONE, who: signal(WHO), status: signal({ ...STATUS, ...status }), ...answers } as Phone;
}

let letters = 0;

/** A letter as it was filed; its id counts up. */
export function letterOf(kind: string, body: object, more: Partial<Letter> = {}): Letter {
  letters += 1;
  const at = { schema: 1, author: "person", basis: 0, made_at_ms: Date.now(), zone: "UTC", offset_min: 0 };
  return { id: `letter-${letters}`, kind, ...at, body: { ...body }, ...more };
}

/** Changes are kept in this window alone. */
export function keepingFor(open: Open): Keeping {
  return keepingOf(keeperOf(open, async () => undefined, troubleCode));
}

type Taken = number | Partial<Reading>;

export interface Visit {
  species: "dog" | "cat";
  taken: readonly Taken[];
  set?: Partial<CuffSet>;
  measured?: Partial<Open["measurement"]>;
}

function readingOf(taken: Taken, at: number): Reading {
  return { id: `r${at}`, taken_s: at * 40, ...(typeof taken === "number" ? { systolic_mmhg: taken } : taken) };
}

const FITTING = { dog: { limb_circumference_mm: 130, cuff_width_mm: 50 }, cat: { limb_circumference_mm: 85, cuff_width_mm: 30 } };

/** An invented visit with these readings, 40 seconds apart, calm and well rested unless said otherwise. */
export function openWith({ species, taken, set, measured }: Visit): Open {
  const open = started({ id: "draft", now_ms: Date.now(), species, method: set?.method ?? "doppler" });
  const only: CuffSet = { method: "doppler", ...FITTING[species], cuff_above_heart_mm: 0, ...set, readings: taken.map(readingOf) };
  return {
    ...open, name: "Marrow", mark: "kennel 4", finished: true, part: "result",
    measurement: {
      ...open.measurement, state: "awake", demeanour: "calm", rhythm: "regular", rest_s: 900, age_months: 96, ...measured, sets: [only],
    },
  };
}
