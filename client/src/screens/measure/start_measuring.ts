/* Opens a new measurement: its draft is on disk before its screen is shown. An animal with an open draft goes on with that one. */
import type { Patient1 as Patient } from "../../contract/wire_types";
import { newId, type PatientCard, type Visit } from "../../offline/journal";
import { filedNow } from "../round/filed";
import { draftOf, lastsOf, openOf, started, type CuffSet, type Open, type Start } from "./open";
import { thePhone } from "../place";
import { go } from "../route";

function methodOf(last: Visit | undefined): CuffSet["method"] {
  const sets = (last?.letter.body as { sets?: CuffSet[] } | undefined)?.sets;
  return sets?.[sets.length - 1]?.method ?? "doppler";
}

async function keepAndGo(start: Start): Promise<void> {
  const open: Open = { ...started(start), at: "open" };
  await thePhone().keepDraft(draftOf(open, start.now_ms));
  filedNow.value = undefined;
  go(`#/measure/${open.id}`);
}

/** Starts with an animal of unknown name. */
export async function startMeasuring({ species }: { species: Patient["species"] }): Promise<void> {
  await keepAndGo({ id: newId(), now_ms: Date.now(), species, method: "doppler" });
}

/** What a measurement takes along of its animal. */
export function patientFacts(id: string, { name, mark, born_on_day }: Patient): NonNullable<Start["patient"]> {
  return { id, name, ...(mark ? { mark } : {}), ...(born_on_day === undefined ? {} : { born_on_day }) };
}

/** What a new measurement of a known animal starts from; how it was measured last is carried over for comparison. */
export async function startOf(card: PatientCard, now_ms: number): Promise<Start> {
  const body = card.letter.body as unknown as Patient;
  const lasts = lastsOf(await thePhone().visits(card.id));
  return { id: newId(), now_ms, species: body.species, method: methodOf(lasts.placed ?? lasts.last), patient: patientFacts(card.id, body), ...lasts };
}

/** A new measurement of a known animal, not kept yet. */
export async function openWith(card: PatientCard, now_ms: number): Promise<Open> {
  return started(await startOf(card, now_ms));
}

/** Starts, or goes on, with a known animal. */
export async function startWith(card: PatientCard): Promise<void> {
  const drafts = await thePhone().drafts();
  const begun = drafts.find((draft) => openOf(draft).measurement.patient === card.id);
  if (begun) return go(`#/measure/${begun.id}`);
  await keepAndGo(await startOf(card, Date.now()));
}
