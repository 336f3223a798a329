/* Drugs on board that move the pressure: added by their group, hours since by a list, taken away by one tap. No doses, no names. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { kebab } from "../../parts/word_ids";
import { DRUG_GROUPS, DRUGS_MOST, HOURS, withDrug, withHours, withoutDrug, type Drug } from "./drugs";
import type { Keeping } from "./keeping";
import { withPlain } from "./fields";

const DAY_H = 24;
/** The list of groups is open: kept with the draft, like everything that is open. */
const LIST = "drug_list";

const groupWord = (group: Drug["group"]): string => say(`drug-${kebab(group)}`);

function hoursWord(hours: number | undefined): string {
  if (hours === undefined) return say("drugs-hours-none");
  return hours > DAY_H * 2 ? say("drugs-days-n", { n: hours / DAY_H }) : say("drugs-hours-n", { n: hours });
}

function OneDrug({ drug, at, keeping }: { drug: Drug; at: number; keeping: Keeping }): JSX.Element {
  const id = `drug-hours-${at}`;
  const choose = (value: string): void => {
    void keeping.act((head) => withHours(head, at, value === "" ? undefined : Number(value)));
  };
  return (
    <li class="one-drug">
      <div class="field">
        <label for={id}>{say("drugs-hours", { group: groupWord(drug.group) })}</label>
        <select id={id} value={drug.hours === undefined ? "" : String(drug.hours)} onChange={(event) => choose(event.currentTarget.value)}>
          {[undefined, ...HOURS].map((hours) => (
            <option key={String(hours)} value={hours === undefined ? "" : String(hours)}>{hoursWord(hours)}</option>
          ))}
        </select>
      </div>
      <button type="button" class="button" aria-label={say("drugs-remove-of", { group: groupWord(drug.group) })} onClick={() => keeping.act((head) => withoutDrug(head, at))}>
        {say("drugs-remove")}
      </button>
    </li>
  );
}

function Groups({ keeping }: { keeping: Keeping }): JSX.Element {
  const add = (group: Drug["group"]): void => {
    void keeping.act((head) => withPlain(withDrug(head, group), ["texts", LIST], ""));
  };
  return (
    <fieldset class="choices">
      <legend>{say("drugs-group")}</legend>
      <div class="why-keys">
        {DRUG_GROUPS.map((group) => (
          <button key={group} type="button" class="button" onClick={() => add(group)}>{groupWord(group)}</button>
        ))}
      </div>
    </fieldset>
  );
}

export function DrugsOnBoard({ keeping }: { keeping: Keeping }): JSX.Element {
  const { measurement: { drugs = [] }, texts } = keeping.head();
  const isOpen = texts[LIST] === "yes";
  const turn = (): void => {
    void keeping.act((head) => withPlain(head, ["texts", LIST], isOpen ? "" : "yes"));
  };
  return (
    <section class="stack" aria-labelledby="drugs-title">
      <h3 class="unseen" id="drugs-title">{say("field-drugs")}</h3>
      <p class="small">{say("drugs-hint")}</p>
      <ul class="stack">{drugs.map((drug, at) => <OneDrug key={`${at}-${drug.group}`} drug={drug} at={at} keeping={keeping} />)}</ul>
      {isOpen && <Groups keeping={keeping} />}
      {drugs.length < DRUGS_MOST && (
        <button type="button" class="button wide" aria-expanded={isOpen} onClick={turn}>
          {say(isOpen ? "drugs-close" : "drugs-add")}
        </button>
      )}
    </section>
  );
}
