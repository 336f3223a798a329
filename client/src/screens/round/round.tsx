/* The round, the first screen: what is not filed yet with its quiet times, then whom to measure, found by typing, the ways to
   everything else, and all animals, however many. Must not hide an animal or a draft. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { FiledLine } from "./filed";
import { FirstCautions } from "./first_cautions";
import { Adding } from "../animal/adding";
import { FindField } from "../animal/find_field";
import { InstallHint } from "./install_hint";
import { isBegun } from "../forms_begun";
import { startMeasuring } from "../measure/start_measuring";
import { Page } from "../page";
import { QuietOnRound } from "./quiet_running";
import { ReadyLine } from "./ready_line";
import { Animals } from "./round_animals";
import { Drafts } from "./round_drafts";
import { go } from "../route";
import { StorageProblem, storageWord } from "../phone/storage_problem";
import { WhoHere } from "../who_here";

const NEW = "new";

export function Round(): JSX.Element {
  const [search, setSearch] = useState("");
  const [adding, setAdding] = useState<string | undefined>(undefined);
  useEffect(() => {
    void isBegun(NEW).then((begun) => begun && setAdding(NEW), () => undefined);
  }, []);
  if (adding) {
    return (
      <Adding
        about={adding}
        name={search.trim()}
        onDone={(id) => {
          setAdding(undefined);
          if (id) go(`#/patient/${id}`);
        }}
      />
    );
  }
  return (
    <Page title={say("round-title")} back="">
      <FiledLine />
      <QuietOnRound />
      <Drafts onAdd={setAdding} />
      <section class="stack">
        <FindField search={search} onSearch={setSearch} />
        <button type="button" class="button act wide" onClick={() => setAdding(NEW)}>
          {say("add-animal")}
        </button>
      </section>
      <MeasureFirst />
      <FirstCautions folded />
      <InstallHint folded />
      <Ways />
      <Animals search={search} />
      <footer class="stack">
        <ReadyLine />
        <WhoHere />
      </footer>
    </Page>
  );
}

function MeasureFirst(): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const start = (species: "dog" | "cat"): void => {
    startMeasuring({ species }).catch((failure: unknown) => setTrouble(storageWord(failure)));
  };
  return (
    <section class="stack">
      <h2>{say("measure-unknown")}</h2>
      <StorageProblem word={trouble} />
      <div class="side-by-side">
        {(["dog", "cat"] as const).map((species) => (
          <button key={species} type="button" class="button" onClick={() => start(species)}>
            {say(`measure-a-${species}`)}
          </button>
        ))}
      </div>
    </section>
  );
}

const WAYS = ["bag", "outbox", "help", "training", "this-phone"] as const;

/** The ways to every other screen: above the animals, which may be many. */
function Ways(): JSX.Element {
  return (
    <nav class="ways" aria-label={say("ways-title")}>
      {WAYS.map((way) => (
        <a key={way} class="button" href={`#/${way}`}>
          {say(`${way}-title`)}
        </a>
      ))}
    </nav>
  );
}
