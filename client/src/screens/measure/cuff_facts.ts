/* What the Cuff part needs beside the open measurement: the bags and which one is in use, widths typed without a bag, and the
   sites of this animal that are not to be used today. Reads from the phone's own record; keeps no copy of it. */
import { useEffect, useState } from "preact/hooks";
import type { Patient1 as Patient } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { bagInUse, bodyOf, rememberBagInUse, type BagBody } from "../bag/bag_in_use";
import { thePhone } from "../place";
import type { BagCard } from "../../offline/journal";
import { dayOf, sitesInForce, type SiteNotUsed } from "../animal/sites_not_used";

/** What could not be opened on this phone: which bag is in use, the bags, or this animal with its sites. */
export type Unopened = "choice" | "bags" | "animal";

interface Read {
  unopened: readonly Unopened[];
  bags: readonly BagCard[];
  chosen: BagCard | undefined;
  typed: string;
  barred: SiteNotUsed[];
}

export interface CuffFacts extends Read {
  bag: BagBody | undefined;
  choose(id: string): Promise<void>;
  keepTyped(text: string): void;
  /** Files the typed widths as a bag, and uses it. */
  keepAsBag(widths: readonly number[]): Promise<void>;
}

/** What a read answered; where a box cannot be opened its name is noted and the part goes on without it. */
async function opened<T>(read: Promise<T>, without: T, what: Unopened, unopened: Unopened[]): Promise<T> {
  try {
    return await read;
  } catch {
    if (!unopened.includes(what)) unopened.push(what);
    return without;
  }
}

/** The bags, and the one in use where that can be read; a single one is it in any case. */
async function bagsNow(unopened: Unopened[]): Promise<Awaited<ReturnType<typeof bagInUse>>> {
  try {
    return await bagInUse();
  } catch {
    const bags = await opened(thePhone().bags(), [], "bags", unopened);
    if (bags.length > 1) unopened.push("choice");
    return { bags, chosen: bags.length === 1 ? bags[0] : undefined };
  }
}

async function readFacts(patient: string | undefined): Promise<Read> {
  const phone = thePhone();
  const unopened: Unopened[] = [];
  const [{ bags, chosen }, typed, cards] = await Promise.all([
    bagsNow(unopened),
    opened(phone.recall("bag"), "", "bags", unopened),
    opened(patient ? phone.patients() : Promise.resolve([]), [], "animal", unopened),
  ]);
  const animal = cards.find(({ id }) => id === patient)?.letter.body as Patient | undefined;
  const barred = animal ? sitesInForce(animal, dayOf(Date.now())) : [];
  return { unopened, bags, chosen, typed: typeof typed === "string" ? typed : "", barred };
}

/** undefined until it was read once. */
export function useCuffFacts(patient: string | undefined): CuffFacts | undefined {
  const [read, setRead] = useState<Read | undefined>(undefined);
  const again = async (): Promise<void> => setRead(await readFacts(patient));
  useEffect(() => {
    void again();
  }, [patient]);
  return read && {
    ...read,
    bag: read.chosen && bodyOf(read.chosen),
    choose: async (id) => {
      await rememberBagInUse(id);
      await again();
    },
    keepTyped: (text) => {
      setRead((now) => now && { ...now, typed: text });
      void thePhone().remember("bag", text).catch(() => undefined);
    },
    keepAsBag: async (widths) => {
      const body: BagBody = { name: say("bag-first-name"), cuffs: widths.map((width_mm) => ({ width_mm })) };
      const { id } = await thePhone().file({ kind: "bag", body });
      await rememberBagInUse(id);
      await again();
    },
  };
}
