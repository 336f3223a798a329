/**
 * Turns letters into patients, visits and bags: amendments replace what they amend, one letter known twice counts once.
 * Pure: the same letters in any order give the same answer. It discards no wording; earlier ones stay readable.
 */
import type { BagCard, EntryState, Letter, PatientCard, Visit } from "./phone_types.ts";

/** A letter and where it stands, from a pull or from this phone's own entries. */
export interface Known {
  readonly letter: Letter;
  readonly inRecord: boolean;
  readonly position?: number;
  /** The phone's own count; only for own entries. */
  readonly number?: number;
  readonly state?: EntryState;
  readonly code?: string;
  readonly serverAssessment?: object;
}

/** The wordings of one thing, the standing one last; `id` is the first letter's. */
interface Line {
  readonly id: string;
  readonly wordings: readonly Known[];
  readonly standing: Known;
}

/** Patients by latest visit, newest first; those never visited after them, by name. */
export function patientsOf(known: readonly Known[]): PatientCard[] {
  const lines = linesOf(known);
  const startsMs = visitStarts(lines);
  const patients = lines.filter(({ standing }) => standing.letter.kind === "patient");
  const cards = patients.map((line) => cardOf(line, startsMs));
  return cards.sort(
    (a, b) => (b.lastVisitMs ?? -1) - (a.lastVisitMs ?? -1) || inOrder(nameOf(a), nameOf(b)) || inOrder(a.id, b.id),
  );
}

/** Visits of one patient, newest first. */
export function visitsOf(known: readonly Known[], patient: string): Visit[] {
  const visits = visitLines(linesOf(known)).map(visitOf);
  return visits
    .filter((visit) => visit.patient === patient)
    .sort((a, b) => b.startedMs - a.startedMs || inOrder(b.id, a.id));
}

/** Bags by name, each in its latest wording. */
export function bagsOf(known: readonly Known[]): BagCard[] {
  const lines = linesOf(known).filter(({ standing }) => standing.letter.kind === "bag");
  const cards = lines.map(({ id, standing: { letter, inRecord } }) => ({ id, letter, inRecord }));
  return cards.sort((a, b) => inOrder(nameOf(a), nameOf(b)) || inOrder(a.id, b.id));
}

function visitLines(lines: readonly Line[]): Line[] {
  return lines.filter(({ standing }) => standing.letter.kind === "measurement");
}

/** The beginnings of each patient's visits, ms UTC. */
function visitStarts(lines: readonly Line[]): Map<string, number[]> {
  const starts = new Map<string, number[]>();
  for (const { patient, startedMs } of visitLines(lines).map(visitOf)) {
    if (patient !== undefined) starts.set(patient, [...(starts.get(patient) ?? []), startedMs]);
  }
  return starts;
}

function cardOf({ id, wordings, standing }: Line, startsMs: Map<string, number[]>): PatientCard {
  const starts = startsMs.get(id) ?? [];
  return {
    id,
    letter: standing.letter,
    inRecord: standing.inRecord,
    amendments: wordings.length - 1,
    visits: starts.length,
    ...(starts.length === 0 ? {} : { lastVisitMs: Math.max(...starts) }),
  };
}

function visitOf({ id, wordings, standing }: Line): Visit {
  const { letter, inRecord, position, state, code, serverAssessment } = standing;
  const { patient, started_at_ms: startedMs } = letter.body;
  return {
    id,
    letter,
    inRecord,
    startedMs: typeof startedMs === "number" ? startedMs : letter.made_at_ms,
    earlier: wordings.slice(0, -1).map((wording) => wording.letter),
    ...(typeof patient === "string" ? { patient } : {}),
    ...(position === undefined ? {} : { position }),
    ...(inRecord || state === undefined ? {} : { state }),
    ...(inRecord || code === undefined ? {} : { code }),
    ...(serverAssessment === undefined ? {} : { serverAssessment }),
  };
}

function linesOf(known: readonly Known[]): Line[] {
  const byId = onceEach(known);
  const lines = new Map<string, Known[]>();
  for (const one of [...byId.values()].sort(inRecordOrder)) {
    const first = one.letter.amends ?? one.letter.id; // `amends` always names the first letter, as on the server
    lines.set(first, [...(lines.get(first) ?? []), one]);
  }
  return [...lines].map(([id, wordings]) => ({ id, wordings, standing: wordings[wordings.length - 1] as Known }));
}

/** Of a letter known twice, what is in the record counts first, then what this phone knows of its own entry. */
function onceEach(known: readonly Known[]): Map<string, Known> {
  const byId = new Map<string, Known>();
  for (const one of known) {
    const other = byId.get(one.letter.id);
    if (other === undefined || weight(one) > weight(other)) byId.set(one.letter.id, one);
  }
  return byId;
}

function weight(one: Known): number {
  return one.inRecord ? 2 : Number(one.state !== undefined);
}

/**
 * The first letter, then its amendments in the record's order, then what this phone filed after them. As on the server:
 * an amendment stands over its original also where that arrived later (another phone was longer without network).
 */
function inRecordOrder(a: Known, b: Known): number {
  const amended = Number(a.letter.amends !== undefined) - Number(b.letter.amends !== undefined);
  if (amended !== 0) return amended;
  const [first, second] = [a.position ?? Infinity, b.position ?? Infinity];
  if (first !== second) return first - second;
  return (a.number ?? 0) - (b.number ?? 0) || inOrder(a.letter.id, b.letter.id);
}

function nameOf(card: PatientCard | BagCard): string {
  return String(card.letter.body["name"] ?? "").toLowerCase();
}

/** By code points, so that two phones with other languages agree. */
function inOrder(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
