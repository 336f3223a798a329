/**
 * Who works on this phone: signs in at the server, keeps the answer sealed, and opens the practice's data key.
 * Signing out forgets the person, never a draft, an entry or a key: what is unsent goes on being handed in.
 */
import { type DataKey, open, seal } from "./boxes.ts";
import { readLine } from "./bundle.ts";
import { makeDataKey, openDataKey, wrapAgain } from "./data_keys.ts";
import { type Database, inOneReading } from "./database.ts";
import type { Network } from "./network.ts";
import type { SignedIn } from "./phone_types.ts";
import type { Reply } from "./replies.ts";
import type { MetaRow, WrapRow } from "./rows.ts";
import { readMeta } from "./sync_store.ts";
import { PhoneTrouble } from "./trouble.ts";
import * as writes from "./writes.ts";

/** The practice this phone works for, and who is signed in. `key` stays open after sign-out, for handing in. */
export interface Place {
  readonly device: string;
  readonly key: DataKey;
  readonly who?: SignedIn;
}

/** What was kept at the last sign-in; undefined on a phone nobody ever signed in on. */
export async function readPlace(outbox: Database): Promise<Place | undefined> {
  const [practice, device] = [await readMeta(outbox, "practice"), await readMeta(outbox, "device")];
  if (practice?.value === undefined || device?.value === undefined) return undefined;
  const [wrap] = await wrapsOf(outbox, String(practice.value));
  if (wrap === undefined) throw new PhoneTrouble("lost");
  const key = await openDataKey(wrap).catch(() => {
    throw new PhoneTrouble("lost");
  });
  const person = await readMeta(outbox, "person");
  // A box that does not open is as good as none: the person signs in again, and nothing else is lost by it.
  const who = person?.box && (await open(key, "meta", "person", person.box).catch(() => undefined));
  return { device: String(device.value), key, ...(who ? { who: who as SignedIn } : {}) };
}

/** @throws PhoneTrouble `wrong_login`, `wait`, or a NetworkTrouble; nothing was changed then */
export async function signIn(outbox: Database, network: Network, login: string, password: string): Promise<Place> {
  const known = (await readMeta(outbox, "device"))?.value;
  const who = readSignedIn(await network.signIn(login, password, known === undefined ? undefined : String(known)));
  const key = await dataKeyFor(outbox, who.practice, who.person);
  const rows: MetaRow[] = [
    { name: "device", value: who.device },
    { name: "practice", value: who.practice },
    { name: "person", box: await seal(key, "meta", "person", who) },
  ];
  await writes.putSignIn(outbox, rows);
  return { device: who.device, key, who };
}

function readSignedIn(reply: Reply): SignedIn {
  if ("failed" in reply) throw new PhoneTrouble(reply.failed);
  const { status, type, body } = reply;
  const said = status === 200 && type === "application/json" ? readLine("signed_in.1", body) : undefined;
  if (said === undefined) throw new PhoneTrouble(codeOf(status, type));
  return {
    practice: said["practice"] as string,
    practiceName: said["practice_name"] as string,
    person: said["person"] as string,
    personName: said["person_name"] as string,
    role: said["role"] as SignedIn["role"],
    device: said["device"] as string,
  };
}

function codeOf(status: number, type: string): string {
  if (status === 429 || status === 503) return "wait";
  if (status >= 500) return "server_trouble";
  if (type !== "application/problem+json") return "not_ours";
  return status === 401 || status === 400 ? "wrong_login" : "server_trouble";
}

/** The practice's data key on this phone, wrapped for this person too; made at the first sign-in. */
async function dataKeyFor(outbox: Database, practice: string, person: string): Promise<DataKey> {
  const before = await wrapsOf(outbox, practice);
  if (before.length === 0) await writes.putWrap(outbox, await makeDataKey(practice, person));
  const wraps = await wrapsOf(outbox, practice);
  const own = wraps.find((wrap) => wrap.person === person) ?? (await wrapAgain(wraps[0] as WrapRow, person));
  if (!wraps.includes(own)) await writes.putWrap(outbox, own);
  return openDataKey(own);
}

async function wrapsOf(outbox: Database, practice: string): Promise<WrapRow[]> {
  const range = IDBKeyRange.bound([practice], [practice, []]);
  return inOneReading(outbox, ["keys"], (connection) => connection.getAll("keys", range));
}
