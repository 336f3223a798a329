/* Which of the practice's bags this phone measures with. Remembered on this phone only; with a single bag it is that one. */
import type { Bag1 } from "../../contract/wire_types";
import type { BagCard, Phone } from "../../offline/journal";
import { thePhone } from "../place";

export type BagBody = Bag1;

const NAME = "bag_in_use";

/** What is in a bag. */
export function bodyOf(card: BagCard): BagBody {
  return card.letter.body as unknown as BagBody;
}

/** All bags by name, and the one in use; of several nobody chose yet, none. */
export async function bagInUse(phone: Pick<Phone, "bags" | "recall"> = thePhone()): Promise<{ bags: BagCard[]; chosen: BagCard | undefined }> {
  const [bags, id] = await Promise.all([phone.bags(), phone.recall(NAME)]);
  return { bags, chosen: bags.find((bag) => bag.id === id) ?? (bags.length === 1 ? bags[0] : undefined) };
}

/** Uses this bag from now on. */
export function rememberBagInUse(id: string): Promise<void> {
  return thePhone().remember(NAME, id);
}
