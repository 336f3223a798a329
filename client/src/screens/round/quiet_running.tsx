/* The quiet times of this phone's drafts, for the round and for the head of a visit; in training those of the record too, marked, since
   real animals wait meanwhile. It reads drafts, works out what is shown each second, and buzzes once where that was asked for. Must not
   write a draft. */
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../../contract/words";
import { buzz } from "../../parts/buzz";
import { timeOfDay } from "../../parts/figures";
import { clockShown, useNow } from "../../parts/now";
import { QuietStrip, type QuietRow } from "../../parts/quiet_strip";
import { inTraining } from "../../parts/training_ground";
import { openOf, type Open } from "../measure/open";
import { clockOf, done_permille, left_s, quietNow, readyAt_ms, waited_s, withSteps, type Quiet } from "../measure/quiet";
import { thePhone, theRecord } from "../place";
import { useRead } from "../use_read";

/** What must be known of the clock while this quiet time runs, as a sentence; of one that knows what this page saw of it. */
export function doubtOf(quiet: Quiet, now_ms: number): string | undefined {
  if (waited_s(quiet, now_ms) === undefined) return say("quiet-before-start");
  const { step_s = 0 } = quiet;
  return step_s === 0 ? undefined : say("quiet-step", { by: step_s > 0 ? "forward" : "back", time: clockOf(Math.abs(step_s)) });
}

/** Without an animal, what tells it from the next one begun. */
function unnamed({ species, started_at_ms }: Open["measurement"]): string {
  const begun = started_at_ms === undefined ? undefined : say("draft-begun", { when: timeOfDay(started_at_ms) });
  return [say("draft-name-none"), say(`species-${species}`), begun].filter(Boolean).join(", ");
}

/** `isReal`: of the record, seen from training; it opens in the record alone, so the row leads to the way there. */
function rowOf({ id, name, mark, measurement }: Open, quiet: Quiet, now_ms: number, isReal: boolean): QuietRow {
  const left = left_s(quiet, now_ms);
  const whose = name === undefined ? unnamed(measurement) : [name, mark].filter(Boolean).join(", ");
  return {
    id,
    href: isReal ? "#/training" : `#/measure/${id}`,
    name: isReal ? say("quiet-row-real", { name: whose }) : whose,
    isOver: left === 0,
    left: clockOf(left),
    ready_at: timeOfDay(readyAt_ms(quiet)),
    done_permille: done_permille(quiet, now_ms),
    doubt: doubtOf(quiet, now_ms),
  };
}

/** Those that run or are over and waited for, the next to finish first. */
function running(opens: readonly Open[], now_ms: number): { open: Open; quiet: Quiet }[] {
  const found = opens.flatMap((open) => [quietNow(open, now_ms)].flatMap((quiet) => (quiet ? [{ open, quiet }] : [])));
  return found.sort((one, other) => readyAt_ms(one.quiet) - readyAt_ms(other.quiet));
}

/** One buzz when one ends in sight; those that were over before anybody looked are told by their row. */
function useBuzz(over: readonly string[]): void {
  const before = useRef<readonly string[] | undefined>(undefined);
  useEffect(() => {
    if (before.current && over.some((id) => !before.current?.includes(id))) buzz();
    before.current = over;
  }, [over.join()]);
}

const NONE: readonly Open[] = [];

/** The record's drafts while in training, else none; read again when the record changed, not at each digit. */
function useReal(): readonly Open[] {
  const [real, setReal] = useState(NONE);
  const changed = inTraining.value ? theRecord().changed.value : undefined;
  useEffect(() => {
    if (changed === undefined) setReal(NONE);
    else void theRecord().drafts().then((drafts) => setReal(drafts.map(openOf)), () => undefined);
  }, [changed]);
  return real;
}

interface Shown {
  opens: readonly Open[];
  /** The id of the one that is shown elsewhere. */
  hidden?: string | undefined;
  most?: number;
  slim?: boolean;
}

function Strip({ opens, hidden, ...how }: Shown): JSX.Element | null {
  const real = useReal();
  const all = [...opens, ...real];
  const now_ms = useNow(all.some(({ quiet }) => quiet !== undefined));
  const seen = clockShown();
  const found = running(all.map((open) => withSteps(open, seen)), now_ms);
  const isReal = (id: string): boolean => real.some((one) => one.id === id);
  useBuzz(found.filter(({ quiet }) => left_s(quiet, now_ms) === 0).map(({ open }) => open.id));
  const rows = found.filter(({ open }) => open.id !== hidden).map(({ open, quiet }) => rowOf(open, quiet, now_ms, isReal(open.id)));
  return <QuietStrip rows={rows} {...how} />;
}

/** All of them, on the round. */
export function QuietOnRound(): JSX.Element | null {
  const drafts = useRead(() => thePhone().drafts()) ?? [];
  return <Strip opens={drafts.map(openOf)} />;
}

/** The other drafts, read when a visit is opened and whenever the page comes back: not at each digit. */
function useOthers(id: string): readonly Open[] {
  const [others, setOthers] = useState<readonly Open[]>([]);
  useEffect(() => {
    const phone = thePhone();
    const read = (): void => {
      void phone.drafts().then((drafts) => setOthers(drafts.map(openOf).filter((open) => open.id !== id)), () => undefined);
    };
    read();
    addEventListener("focus", read);
    document.addEventListener("visibilitychange", read);
    return () => {
      removeEventListener("focus", read);
      document.removeEventListener("visibilitychange", read);
    };
  }, [id]);
  return others;
}

/** The next to finish, in the head of a visit; its own one not on *Calm*, where it stands large. */
export function QuietInVisit({ open }: { open: Open }): JSX.Element | null {
  const opens = [open, ...useOthers(open.id)];
  const isOwnElsewhere = open.part === "calm" || open.part === "readings";
  return <Strip opens={opens} hidden={isOwnElsewhere ? open.id : undefined} most={1} slim={open.part === "readings"} />;
}
