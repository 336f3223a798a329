/* The Measure screen: one open measurement, its parts folded when done, and the keeper between every press and its paint.
   A killed tab finds all of it again, since the part, the half-typed text and the acts to undo lie in the draft itself. */
import type { JSX } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import { hasWords, say } from "../../contract/words";
import { Head } from "../../parts/head";
import { Problems } from "../../parts/problems";
import { Still } from "../../parts/still";
import { kebab } from "../../parts/word_ids";
import { CalmPart } from "./calm_part";
import { useClockKept } from "./clock_kept";
import { CuffPart } from "./cuff_part";
import { Folds, leave, shownOf } from "./folds";
import { Page } from "../page";
import { hasLeft, stayAt } from "../last_place";
import { keeperOf, type Keeper } from "./keeper";
import { keepingOf, troubleCode, type Keeping } from "./keeping";
import { draftOf, openOf, setNow, type Open, type Part } from "./open";
import { problemsHere } from "./part_problems";
import { thePhone } from "../place";
import { ReadingsPart } from "./readings_part";
import { helpFirst } from "./ready";
import { ReadyPart } from "./ready_part";
import { ResultPart } from "./result_part";
import { QuietInVisit } from "../round/quiet_running";
import { nameWindow } from "../window_title";
import { markBelow, WhoMeasured } from "./who_measured";

/** The open measurement of a draft id; undefined while it is looked for, null when the phone does not have it. */
function useKeeper(id: string): Keeper<Open> | null | undefined {
  const [keeper, setKeeper] = useState<Keeper<Open> | null | undefined>(undefined);
  useEffect(() => {
    let current = true;
    let leave = (): void => undefined;
    const phone = thePhone(); // this one and no other, should training begin or end while a write is under way
    void hasLeft(id).then(async (unkept) => {
      const drafts = await phone.drafts();
      const draft = drafts.find((one) => one.id === id);
      const write = (open: Open): Promise<void> => phone.keepDraft(draftOf(open, Date.now()));
      if (!current) return;
      const found = draft ? (unkept ?? keeperOf(openOf(draft), write, troubleCode)) : null;
      if (found) leave = stayAt(id, found, phone);
      setKeeper(found);
    });
    return () => {
      current = false;
      leave();
    };
  }, [id]);
  return keeper;
}

/** The screen of one draft. */
export function Measure({ id }: { id: string }): JSX.Element {
  const keeper = useKeeper(id);
  if (keeper === undefined) return <Page title={say("measure-title")} />;
  if (keeper === null) {
    return (
      <Page title={say("measure-title")}>
        <p>{say("draft-missing")}</p>
      </Page>
    );
  }
  return <Opened keeper={keeper} />;
}

function Opened({ keeper }: { keeper: Keeper<Open> }): JSX.Element {
  const keeping = useMemo(() => keepingOf(keeper), [keeper]);
  const open = keeper.shown.value;
  const status = thePhone().status.value;
  useClockKept(keeping);
  const title = open.name === undefined ? say("measure-title") : say("measure-of", { name: open.name });
  const isWrong = open.part === "readings" && open.problem !== undefined;
  useEffect(() => {
    nameWindow(title, isWrong);
  }, [title, isWrong]);
  return (
    <div class={open.part === "readings" ? "page still" : "page"}>
      <Still on={[status.unsent, open.part, open.name, open.mark, open.measurement]} draw={() => <MeasureHead open={open} unsent={status.unsent} />} />
      <main class="main measure" id="content" tabIndex={-1}>
        <Unkept keeper={keeper} />
        <QuietInVisit open={open} />
        {!isCovered(open) && <Still on={shownOf(open)} draw={() => <Folds open={open} keeping={keeping} />} />}
        <PartNow open={open} keeping={keeping} />
      </main>
    </div>
  );
}

function MeasureHead({ open, unsent }: { open: Open; unsent: number }): JSX.Element {
  return (
    <Head unsent={unsent} help={open.part} below={markBelow(open)}>
      <div class="head-measure">
        <a class="link back" href="#/round" aria-label={say("back-to-patients")}>
          ‹
        </a>
        <WhoMeasured open={open} />
      </div>
    </Head>
  );
}

function Unkept({ keeper }: { keeper: Keeper<Open> }): JSX.Element | null {
  const unkept = keeper.unkept.value;
  if (!unkept) return null;
  const word = `storage-${kebab(unkept.code)}`;
  return (
    <div class="note" role="alert">
      <p>{say(hasWords(word) ? word : "kept-not")}</p>
      <button type="button" class="button" onClick={() => void keeper.retry()}>
        {say("kept-retry")}
      </button>
    </div>
  );
}

/** Something lies over the whole part, and the way on is by its own keys alone. */
function isCovered(open: Open): boolean {
  return open.part === "readings" ? open.sheet !== undefined : open.part === "ready" && helpFirst(open) !== undefined;
}

function PartNow({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const [asked, setAsked] = useState(0);
  const done = (to: Part) => (): void => {
    void keeping.act((head) => leave(head, to)).then(() => {
      setAsked((times) => times + 1);
      scrollTo(0, 0);
    });
  };
  if (open.part === "readings") return <ReadingsPart key={setNow(open).method} open={open} keeping={keeping} />;
  if (open.part === "result") return <ResultPart open={open} keeping={keeping} />;
  return (
    <>
      <Problems problems={problemsHere(open)} asked={[open.part, open.texts[`left_${open.part}`], asked].join()} />
      {open.part === "ready" && <ReadyPart open={open} keeping={keeping} onDone={done("calm")} />}
      {open.part === "calm" && <CalmPart open={open} keeping={keeping} onDone={done("cuff")} />}
      {open.part === "cuff" && <CuffPart open={open} keeping={keeping} onDone={done("readings")} />}
    </>
  );
}
