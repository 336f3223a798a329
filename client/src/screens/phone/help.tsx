/* Help, offline and in place: short topics, the one it was asked for first and open, the cautions, what the words of sending
   mean, whom to tell, and which build and rules these are. The way back leads to where it was asked. It asks no network. */
import type { ComponentChildren, JSX } from "preact";
import { useState } from "preact/hooks";
import { sayHelp } from "../../contract/help_words";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import type { Species } from "../../parts/drawings/drawing";
import { Glossary } from "../../parts/glossary";
import { Guide } from "../../parts/guide";
import type { GuideStep } from "../../parts/guide_card";
import { Cares } from "../round/first_cautions";
import { wayBack } from "./help_way";
import { openPlace } from "../last_place";
import { openOf } from "../measure/open";
import { Page } from "../page";
import { thePhone, theRecord } from "../place";
import { useRead } from "../use_read";
import { Versions } from "./versions";

const STEPS = ["ready", "calm", "cuff", "readings", "result", "words"] as const;
const REST = ["sending", "cautions", "first", "offline", "training", "report", "versions"] as const;

type Topic = (typeof STEPS)[number] | (typeof REST)[number];

/** Sentences of a topic, `help-<topic>-1` and on: so many. */
const LINES: Record<Topic, number> = {
  ready: 1, calm: 2, cuff: 2, readings: 3, result: 2, words: 0,
  sending: 1, cautions: 0, first: 3, offline: 3, training: 2, report: 2, versions: 0,
};

/** The guides with drawings that belong to a step. */
const GUIDES: Partial<Record<Topic, readonly GuideStep[]>> = {
  ready: ["ready"], calm: ["calm"], cuff: ["cuff", "site", "posture", "level"], readings: ["readings"], result: ["result"],
};

/** The words an entry goes by, in the order it passes through them. */
const STATES = ["waiting", "sending", "stored", "needs-you"] as const;

function Lines({ topic }: { topic: Topic }): JSX.Element {
  const lines = Array.from({ length: LINES[topic] }, (_, at) => `help-${topic}-${at + 1}`);
  const practice = theRecord().who.value?.practiceName ?? sayHelp("help-your-practice");
  return <>{lines.map((line) => <p key={line}>{sayHelp(line, { practice, address: location.host })}</p>)}</>;
}

function States(): JSX.Element {
  return (
    <dl>
      {STATES.flatMap((state) => [
        <dt key={state}>{say(`sync-${state}`)}</dt>,
        <dd key={`${state} means`}>{sayHelp(`state-means-${state}`)}</dd>,
      ])}
    </dl>
  );
}

/** What a topic shows beside its sentences. */
const MORE: Partial<Record<Topic, (species: Species) => ComponentChildren>> = {
  words: (species) => <Glossary species={species} />,
  sending: () => <States />,
  cautions: () => <Cares />,
  offline: () => <a class="link" href="#/this-phone">{say("this-phone-title")}</a>,
  training: () => <a class="link" href="#/training">{say("training-title")}</a>,
  versions: () => <Versions />,
};

/** Holds its content only while it is open: a page of closed drawings would cost the phone for nothing. */
function OneTopic({ topic, species, isAsked }: { topic: Topic; species: Species; isAsked: boolean }): JSX.Element {
  const [isOpen, setOpen] = useState(isAsked);
  return (
    <details class="topic" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{sayHelp(`help-${topic}`)}</summary>
      {isOpen && (
        <div class="stack">
          <Lines topic={topic} />
          {GUIDES[topic]?.map((step) => <Guide key={step} step={step} species={species} />)}
          {MORE[topic]?.(species)}
        </div>
      )}
    </details>
  );
}

/** The species of the measurement help was asked from; a dog where there is none. */
function useSpecies(): [Species, (species: Species) => void] {
  const [chosen, setChosen] = useState<Species | undefined>(undefined);
  const drafts = useRead(() => thePhone().drafts()) ?? [];
  const open = drafts.find(({ id }) => id === openPlace());
  return [chosen ?? (open ? openOf(open).measurement.species : "dog"), setChosen];
}

export function Help({ id }: { id: string }): JSX.Element {
  const isSignedIn = theRecord().who.value !== undefined;
  const [species, setSpecies] = useSpecies();
  const answers = (["dog", "cat"] as const).map((value) => ({ value, label: say(`species-${value}`) }));
  const asked = [...STEPS, ...REST].find((topic) => topic === id);
  return (
    <Page title={say("help-title")} back={isSignedIn ? wayBack() : "#/sign-in"} backWord="help-back">
      {asked && (
        <section class="topics" aria-label={sayHelp("help-asked")}>
          <OneTopic key={asked} topic={asked} species={species} isAsked />
        </section>
      )}
      <p>{sayHelp("help-here")}</p>
      <Choices name="species" label={sayHelp("help-species")} answers={answers} value={species} onChoose={setSpecies} />
      {[STEPS, REST].map((topics) => (
        <section class="topics" key={topics[0]} aria-label={sayHelp(topics === STEPS ? "help-steps" : "help-rest")}>
          {topics.filter((topic) => topic !== asked).map((topic) => <OneTopic key={topic} topic={topic} species={species} isAsked={false} />)}
        </section>
      ))}
    </Page>
  );
}
