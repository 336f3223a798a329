/* The patient list: what is not filed yet first, then every animal, found by typing. Must not hide an animal or a draft. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { say } from "../contract/words";
import { dayAndTime } from "../parts/figures";
import type { Patient1 as Patient } from "../contract/wire_types";
import type { Draft, PatientCard } from "../offline/journal";
import { AddAnimal, recallBegun } from "./add_animal";
import { FiledLine } from "./filed";
import { FirstCautions } from "./first_cautions";
import { openOf } from "./measure/open";
import { Page } from "./page";
import { thePhone } from "./place";
import { go } from "./route";
import { startMeasuring } from "./measure/start_measuring";
import { StorageProblem, storageWord } from "./storage_problem";
import { useRead } from "./use_read";

/** Folds case and accents, so that typing "zoe" finds "Zoë". */
export function folded(text: string): string {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();
}

/** The animal as it is said in a letter of kind patient. */
export function patientOf(card: PatientCard): Patient {
  return card.letter.body as unknown as Patient;
}

/** Cards whose name or mark holds every word of the search. */
export function matching(cards: readonly PatientCard[], search: string): PatientCard[] {
  const words = folded(search).split(/\s+/).filter(Boolean);
  return cards.filter((card) => {
    const { name, mark = "" } = patientOf(card);
    const text = folded(`${name} ${mark}`);
    return words.every((word) => text.includes(word));
  });
}

function DraftLine({ draft }: { draft: Draft }): JSX.Element {
  const open = openOf(draft);
  const name = open.name ?? say("draft-name-none");
  const n = open.measurement.sets.reduce((sum, set) => sum + set.readings.length, 0);
  return (
    <li>
      <a class="row" href={`#/measure/${draft.id}`} aria-label={say("draft-continue", { name })}>
        <strong>{say("draft-line", { name, n })}</strong>
        <span class="small quiet">{[say(`species-${open.measurement.species}`), open.mark, dayAndTime(draft.updatedMs)].filter(Boolean).join(" · ")}</span>
      </a>
    </li>
  );
}

/** One animal in a list: name, species, mark, and when it was last measured. */
export function AnimalLine({ card }: { card: PatientCard }): JSX.Element {
  const { name, species, mark } = patientOf(card);
  const seen = card.lastVisitMs === undefined ? undefined : dayAndTime(card.lastVisitMs);
  return (
    <>
      <strong>{name}</strong>
      <span class="small quiet">{[say(`species-${species}`), mark, seen].filter(Boolean).join(" · ")}</span>
    </>
  );
}

function Drafts(): JSX.Element | null {
  const drafts = useRead(() => thePhone().drafts());
  if (!drafts || drafts.length === 0) return null;
  return (
    <section>
      <h2>{say("patients-drafts")}</h2>
      <ul class="list">{drafts.map((draft) => <DraftLine key={draft.id} draft={draft} />)}</ul>
    </section>
  );
}

function Animals({ search }: { search: string }): JSX.Element {
  const cards = useRead(() => thePhone().patients());
  const found = matching(cards ?? [], search);
  return (
    <>
      <h2>{say("patients-all")}</h2>
      {cards && cards.length === 0 && <p>{say("patients-none")}</p>}
      {cards && cards.length > 0 && found.length === 0 && <p role="status">{say("patients-none-found", { text: search })}</p>}
      <ul class="list">
        {found.map((card) => (
          <li key={card.id}>
            <a class="row" href={`#/patient/${card.id}`}>
              <AnimalLine card={card} />
            </a>
          </li>
        ))}
      </ul>
    </>
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

export function Round(): JSX.Element {
  const [search, setSearch] = useState("");
  const [adding, setAdding] = useState(false);
  useEffect(() => {
    void recallBegun().then((begun) => begun && setAdding(true));
  }, []);
  if (adding) {
    return (
      <AddAnimal
        name={search}
        onDone={(id) => {
          setAdding(false);
          if (id) go(`#/patient/${id}`);
        }}
      />
    );
  }
  return (
    <Page title={say("round-title")} back="">
      <FiledLine />
      <FirstCautions />
      <Drafts />
      <section class="stack">
        <div class="field">
          <label for="search">{say("patients-search")}</label>
          <input id="search" type="text" autocomplete="off" enterkeyhint="search" value={search} onInput={(event) => setSearch(event.currentTarget.value)} />
        </div>
        <button type="button" class="button act wide" onClick={() => setAdding(true)}>
          {say("add-animal")}
        </button>
      </section>
      <MeasureFirst />
      <section class="stack">
        <Animals search={search} />
      </section>
      <Who />
    </Page>
  );
}

/** Who works on this phone, and the way out; unsent entries are named before. */
function Who(): JSX.Element | null {
  const [asked, setAsked] = useState(false);
  const { who, status } = thePhone();
  if (!who.value) return null;
  const { unsent } = status.value;
  const out = (): void => {
    if (unsent > 0 && !asked) setAsked(true);
    else void thePhone().signOut();
  };
  return (
    <footer class="stack small">
      <p>{say("signed-in-as", { person: who.value.personName, practice: who.value.practiceName })}</p>
      {asked && <p role="alert">{say("sign-out-unsent", { n: unsent })}</p>}
      <button type="button" class="button" onClick={out}>
        {say(asked ? "sign-out-really" : "sign-out")}
      </button>
    </footer>
  );
}
