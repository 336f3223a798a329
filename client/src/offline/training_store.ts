/**
 * Where training keeps its rows: one database of its own, boxes under a key of its own, opened by name here and nowhere
 * else. Nothing in this file takes a database as an argument, so nothing in it can empty or fill the phone's record.
 */
import type { DataKey } from "./boxes.ts";
import { makeDataKey, openDataKey } from "./data_keys.ts";
import { type Database, database, inOneReading, inOneTransaction } from "./database.ts";
import { type EntryRow, OUTBOX, type Layout, type WrapRow, practiceLayout } from "./rows.ts";
import { PhoneTrouble } from "./trouble.ts";
import * as writes from "./writes.ts";

/** Stands where a practice's id stands in the record; it is no id, so no server would take it. */
export const TRAINING = "training";

/** The stores of the record's two databases in one: the same rows are read by the same readers. */
const LAYOUT: Layout = {
  name: "quietcuff-training",
  version: 1,
  build(fresh) {
    OUTBOX.build(fresh);
    practiceLayout(TRAINING).build(fresh);
  },
};

/** An entry not numbered yet. */
export type NewRow = Omit<EntryRow, "number">;

export interface TrainingStore {
  readonly database: Database;
  readonly key: DataKey;
  /**
   * Files the samples, all of them or none, where nothing has been filed yet. `isAnew` takes every entry, draft and setting away
   * first, in the same transaction; the key stays.
   */
  fill(samples: readonly NewRow[], isAnew: boolean): Promise<void>;
}

/** @throws PhoneTrouble like any store of this phone */
export async function openTrainingStore(): Promise<TrainingStore> {
  const own = database(LAYOUT, () => undefined);
  const key = await keyOf(own).catch((thrown: unknown) => {
    own.letGo();
    throw thrown instanceof PhoneTrouble ? thrown : new PhoneTrouble("lost");
  });
  return { database: own, key, fill: (samples, isAnew) => fillOnce(own, samples, isAnew) };
}

async function keyOf(own: Database): Promise<DataKey> {
  if ((await wraps(own)).length === 0) await writes.putWrap(own, await makeDataKey(TRAINING, TRAINING));
  return openDataKey((await wraps(own))[0] as WrapRow);
}

function wraps(own: Database): Promise<WrapRow[]> {
  return inOneReading(own, ["keys"], (connection) => connection.getAll("keys"));
}

function fillOnce(own: Database, samples: readonly NewRow[], isAnew: boolean): Promise<void> {
  return inOneTransaction(own, ["entries", "drafts", "meta"], ({ entries, drafts, meta }) => {
    if (isAnew) for (const store of [entries, drafts, meta]) store.clear();
    const filed = entries.count(); // asked inside: another window may have filled it meanwhile
    filed.onsuccess = () => {
      if (filed.result === 0) for (const sample of samples) entries.add(sample);
    };
  });
}
