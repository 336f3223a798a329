/* What was noted of each question in the rest of *Calm*, in words: for its line there, and for the one line all of it is folded to.
   Must not say anything of a question that was not answered. */
import "../../contract/calm_words";
import { say } from "../../contract/words";
import { tenths } from "../../parts/figures";
import { kebab } from "../../parts/word_ids";
import { ageFacts } from "../animal/patient_facts";
import type { Open } from "./open";

/** In the order they are asked: what is answered at nearly every visit first. */
export const MORE_QUESTIONS = ["place", "owner", "circumstances", "rhythm", "drugs", "treatment", "age", "rest"] as const;
export type MoreQuestion = (typeof MORE_QUESTIONS)[number];

const lower = (words: string): string => words.toLocaleLowerCase();

function circumstancesWords({ measurement: { circumstances } }: Open): string | undefined {
  if (circumstances?.length === 0) return say("summary-nothing-happened");
  return circumstances?.map((one) => say(`circumstance-${kebab(one)}`)).join(", ");
}

function ageWords({ measurement: { age_months } }: Open): string | undefined {
  return age_months === undefined ? undefined : say("summary-age", { ...ageFacts(age_months) });
}

/** undefined where nothing was noted. What the first reading wrote down is no answer to the question for minutes: that is told above. */
export function notedMore(open: Open, question: MoreQuestion): string | undefined {
  const { place, owner_present: owner, rhythm, drugs = [], treatment, rest_s } = open.measurement;
  const words: Record<MoreQuestion, () => string | undefined> = {
    place: () => place && say(`place-${place}`),
    owner: () => (owner === undefined ? undefined : say(owner ? "summary-owner-yes" : "summary-owner-no")),
    circumstances: () => circumstancesWords(open),
    rhythm: () => rhythm && say("summary-rhythm", { word: lower(say(`rhythm-${rhythm}`)) }),
    drugs: () => (drugs.length === 0 ? undefined : say("summary-drugs", { n: drugs.length })),
    treatment: () => treatment && say("summary-treatment", { word: lower(say(`treatment-${treatment}`)) }),
    age: () => ageWords(open),
    rest: () => (rest_s !== undefined && open.texts["rest"]?.trim() ? say("summary-rest", { minutes: tenths(Math.floor(rest_s / 6)) }) : undefined),
  };
  return words[question]();
}
