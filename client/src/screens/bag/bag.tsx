/* Bag: the cuffs, gauges, probes and machines that are carried. Several bags may exist; which one this phone measures with is one tap.
   A bag is filed as one letter with its whole wording, like everything else that leaves the phone. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import "../../contract/cuff_words";
import { say } from "../../contract/words";
import type { BagCard } from "../../offline/journal";
import { Choices } from "../../parts/choices";
import { BagForm } from "./bag_form";
import { bagInUse, bodyOf, rememberBagInUse } from "./bag_in_use";
import { Page } from "../page";
import { useRead } from "../use_read";

const NEW = "new";

/** The page: which bag, and the bag itself to be changed. */
export function Bag(): JSX.Element {
  const read = useRead(() => bagInUse());
  const [asked, setAsked] = useState<string | undefined>(undefined);
  const [wrong, setWrong] = useState(false);
  // Until a person chooses, the record decides: on a new phone the page is open before the practice's bag has arrived.
  const wanted = asked ?? read?.chosen?.id ?? (read?.bags.length === 0 ? NEW : undefined);
  return (
    <Page title={say("bag-title")} wrong={wrong}>
      {read && !wanted && <p class="note">{say("bag-choose")}</p>}
      {read && read.bags.length > 0 && <Which bags={read.bags} wanted={wanted} onWant={setAsked} />}
      {read && read.bags.length === 0 && <p>{say("bag-none")}</p>}
      {read && wanted && (
        <BagForm
          key={wanted}
          card={read.bags.find(({ id }) => id === wanted)}
          isFirst={read.bags.length === 0}
          onWrong={setWrong}
          onSaved={(id) => void rememberBagInUse(id).then(() => setAsked(id))}
        />
      )}
    </Page>
  );
}

interface WhichProps {
  bags: readonly BagCard[];
  wanted: string | undefined;
  onWant: (id: string) => void;
}

function Which({ bags, wanted, onWant }: WhichProps): JSX.Element {
  return (
    <Choices
      name="which-bag"
      label={say("bag-which")}
      answers={[...bags.map((bag) => ({ value: bag.id, label: bodyOf(bag).name })), { value: NEW, label: say("bag-new") }]}
      value={wanted}
      onChoose={(id) => {
        onWant(id);
        if (id !== NEW) void rememberBagInUse(id);
      }}
    />
  );
}
