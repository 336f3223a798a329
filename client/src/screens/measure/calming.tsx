/* Awake, calmed by a drug or sedated; and when calmed, by which group of drugs and how long ago. Groups only: quietcuff never doses. */
import type { ComponentChildren, JSX } from "preact";
import type { Measurement1 as Measurement } from "../../contract/wire_types";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { kebab } from "../../parts/word_ids";
import { withState } from "./fields";
import type { Keeping } from "./keeping";
import { changed } from "./open";

type Group = NonNullable<Measurement["calming"]>["drug_group"];

const GROUPS: readonly Group[] = [
  "gabapentinoid", "serotonergic", "benzodiazepine", "opioid", "alpha2_agonist", "phenothiazine", "other", "not_known",
];

/** The state of the animal. */
export function State({ keeping }: { keeping: Keeping }): JSX.Element {
  return (
    <Choices
      name="state"
      label={say("field-state")}
      answers={(["awake", "calmed", "sedated"] as const).map((value) => ({ value, label: say(`state-${value}`) }))}
      value={keeping.head().measurement.state}
      onChoose={(value) => keeping.act((head) => withState(head, value))}
    />
  );
}

/** Asked only of a calmed animal; how long ago (`children`) only once the group is known, since the record holds both together. */
export function Calming({ keeping, children }: { keeping: Keeping; children: ComponentChildren }): JSX.Element | null {
  const { state, calming } = keeping.head().measurement;
  if (state !== "calmed") return null;
  return (
    <>
      <Choices
        name="drug-group"
        label={say("field-drug-group")}
        answers={GROUPS.map((value) => ({ value, label: say(`drug-group-${kebab(value)}`) }))}
        value={calming?.drug_group}
        onChoose={(drug_group) =>
          keeping.act((head) => changed(head, "field-drug-group", ["measurement", "calming"], { ...head.measurement.calming, drug_group }))
        }
      />
      {calming && children}
    </>
  );
}
