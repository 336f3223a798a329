/* The series as it is taken: what is seen above, for reading only; number pad below, for the thumb. */
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { say } from "../../contract/words";
import { newId } from "../../offline/journal";
import { KeptInput } from "../../parts/kept_input";
import { NumberPad, type Key } from "../../parts/number_pad";
import { Still } from "../../parts/still";
import { theWake } from "../../parts/wake";
import { judged, limits } from "./judged";
import type { Keeping } from "./keeping";
import { setNow, without, type CuffSet, type Open } from "./open";
import { deleted, digit, fieldsOf, skipped, typed, type PadField } from "./pad";
import { ReadingsSheet } from "./readings_sheet";
import { offersSecondLook, SecondLook } from "./second_look";
import { Seen } from "./seen";
import { Since } from "./since";
import { added, attempted, finished, setAside } from "./series";
import { undone } from "./undo";
import { urgentOf } from "./urgent";
import { UrgentFolded } from "./urgent_panel";
import { sayAct, saying, valueOf } from "./wording";

/** Takes the latest act back and says which. */
export function undo(open: Open): Open {
  const [{ sheet: _sheet, problem: _problem, added: _added, ...now }, act] = undone(open);
  return { ...now, said: act ? { word: "undone", facts: { act: sayAct(act) } } : { word: "undo-nothing", facts: {} } };
}

function pressed(key: Key, open: Open, at_ms: number, id: string): Open {
  const set = setNow(open);
  const latest = set.readings[set.readings.length - 1];
  if (key === "delete") return { ...open, pad: deleted(open.pad, fieldsOf(set.method)) };
  if (key === "skip" || key === "next") return { ...open, pad: skipped(open.pad, fieldsOf(set.method)) };
  if (key === "undo") return undo(open);
  if (key === "pulse") return { ...open, sheet: { kind: "pulse" } };
  if (key === "set_aside") return latest ? { ...open, sheet: { kind: "reasons", id: latest.id } } : open;
  if (key === "put_back") return latest ? setAside(open, latest.id, undefined, valueOf(latest)) : open;
  return attempted(open, key, at_ms, id, valueOf({ id, beyond: key }));
}

function PadFields({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const onAdd = (): void => add(keeping);
  const wrong = open.problem?.field;
  useEffect(() => {
    if (wrong) document.getElementById(`pad-${wrong}`)?.focus();
  }, [open.problem]);
  return (
    <div class={setNow(open).method === "oscillometric" ? "pad-fields several" : "pad-fields"}>
      {fieldsOf(setNow(open).method).map((field: PadField) => (
        <div class="pad-field" key={field} data-now={String(open.pad.field === field)}>
          <label for={`pad-${field}`}>{say(`pad-${field}`)}</label>
          <KeptInput
            id={`pad-${field}`}
            text={open.pad.texts[field] ?? ""}
            newest={() => keeping.head().pad.texts[field] ?? ""}
            mode="none"
            wrong={open.problem?.field === field}
            describedBy={open.problem?.field === field ? "pad-wrong" : undefined}
            onText={(text) => keeping.act((head) => ({ ...head, pad: typed(head.pad, field, text) }))}
            onEnter={onAdd}
            onFocus={() => {
              if (keeping.head().pad.field !== field) keeping.act((head) => ({ ...head, pad: { ...head.pad, field } }));
            }}
          />
        </div>
      ))}
    </div>
  );
}

function add(keeping: Keeping): void {
  const [at_ms, id] = [Date.now(), newId()];
  keeping.act((head) => added(head, at_ms, id, limits()));
}

/** The screen stays awake from the first tap on, and may sleep once this part is left. */
function useWake(): () => void {
  useEffect(() => () => theWake().letGo(), []);
  return () => theWake().keep();
}

/** Readings: what is seen, what is typed, and the keys or what lies over them. */
export function ReadingsPart({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const stayAwake = useWake();
  const urgent = urgentOf(open.measurement, judged(open));
  return (
    <section class="readings" aria-label={say("part-readings")} onPointerDown={stayAwake} onKeyDown={stayAwake}>
      {urgent && <UrgentFolded urgent={urgent} />}
      <Still on={[open.measurement, open.quiet, urgent]} draw={() => <Seen open={open} urgent={urgent !== undefined} />} />
      {open.sheet && <Said open={open} />}
      {open.sheet ? (
        <ReadingsSheet open={open} sheet={open.sheet} keeping={keeping} />
      ) : (
        <Keys open={open} isUrgent={urgent !== undefined} keeping={keeping} />
      )}
    </section>
  );
}

/** There is room for one quiet line: what was just said, or what is urgent, stands in place of the count of seconds. */
function Keys({ open, isUrgent, keeping }: { open: Open; isUrgent: boolean; keeping: Keeping }): JSX.Element {
  const { readings, method } = setNow(open);
  const isPutBack = readings[readings.length - 1]?.set_aside !== undefined;
  const begun = Boolean(open.pad.texts[open.pad.field]?.trim());
  return (
    <div class="keys-foot">
      <Said open={open} />
      {!open.said && !open.problem && !isUrgent && <Since open={open} />}
      <PadFields open={open} keeping={keeping} />
      <Unkept keeping={keeping} />
      <Still on={[keeping, method, begun, isPutBack]} draw={() => <Pad method={method} begun={begun} isPutBack={isPutBack} keeping={keeping} />} />
      <Still on={[keeping, open.measurement, open.quiet]} draw={() => <Below open={open} keeping={keeping} />} />
    </div>
  );
}

interface PadProps {
  method: CuffSet["method"];
  begun: boolean;
  isPutBack: boolean;
  keeping: Keeping;
}

function Pad({ method, begun, isPutBack, keeping }: PadProps): JSX.Element {
  return (
    <NumberPad
      several={method === "oscillometric"}
      begun={begun}
      latest={isPutBack ? "put_back" : "set_aside"}
      onDigit={(text) => keeping.act((head) => ({ ...without(head), pad: digit(head.pad, text, fieldsOf(setNow(head).method)) }))}
      onKey={(key) => {
        const [at_ms, id] = [Date.now(), newId()];
        keeping.act((head) => pressed(key, head, at_ms, id));
      }}
      onAdd={() => add(keeping)}
    />
  );
}

/** Digits that are typed and not on disk, shown apart from those that are. */
function Unkept({ keeping }: { keeping: Keeping }): JSX.Element | null {
  const unkept = keeping.unkept();
  if (!unkept) return null;
  return <p class="unkept-text">{Object.values(unkept.pad.texts).filter(Boolean).join(" ")}</p>;
}

function Said({ open }: { open: Open }): JSX.Element | null {
  if (open.problem) {
    return (
      <p class="wrong" id="pad-wrong" role="alert">
        {saying({ ...open.problem, facts: { ...open.problem.facts, field: say(`pad-${open.problem.field}`) } })}
      </p>
    );
  }
  return open.said ? (
    <p class="small" role="status">
      {saying(open.said)}
    </p>
  ) : null;
}

function Below({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const count = open.measurement.sets.reduce((sum, set) => sum + set.readings.length, 0);
  return (
    <div class="keys below">
      <button
        type="button"
        class="button key"
        aria-label={say("readings-all", { n: count })}
        onClick={() => keeping.act((head) => ({ ...without(head), sheet: { kind: "list" } }))}
      >
        {say("readings-all-short", { n: count })}
      </button>
      <button type="button" class="button key" onClick={() => keeping.act((head) => ({ ...without(head), sheet: { kind: "new_set" } }))}>
        {say("new-set")}
      </button>
      {offersSecondLook(open, judged(open)) && <SecondLook keeping={keeping} look="button key" />}
      <button type="button" class="button key" onClick={() => keeping.act((head) => ({ ...without(head), sheet: { kind: "stop" } }))}>
        {say("stop")}
      </button>
      <button type="button" class="button key" onClick={() => keeping.act(finished)}>
        {say("finish")}
      </button>
    </div>
  );
}
