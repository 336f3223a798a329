/* The way into training and out of it: another phone is handed to the screens, and the ground says so. Must not file or keep
   anything of what is measured. */
import { effect } from "@preact/signals";
import { sayHelp } from "../contract/help_words";
import type { LetterParts } from "../offline/journal";
import { openTraining, type TrainingPhone } from "../offline/training";
import { inTraining, showTraining } from "../parts/training_ground";
import { filedNow } from "./filed";
import { theRecord, usePhoneOf } from "./place";
import { SHOW_MEAN } from "./show_mean";

let training: TrainingPhone | undefined;

/** Animals and a bag to learn with. They are nobody's. */
function samples(): LetterParts[] {
  const animal = (species: "dog" | "cat", which: string): LetterParts => ({
    kind: "patient",
    body: { species, name: sayHelp(`sample-${which}`), mark: sayHelp("sample-mark") },
  });
  const cuffs = [20, 25, 30, 35, 40, 50].map((width_mm) => ({ width_mm }));
  const gauges = [{ name: sayHelp("sample-gauge"), type: "aneroid" }];
  const bag: LetterParts = { kind: "bag", body: { name: sayHelp("sample-bag"), cuffs, gauges } };
  return [animal("cat", "cat-calm"), animal("cat", "cat-old"), animal("dog", "dog-small"), animal("dog", "dog-large"), bag];
}

async function openOnce(): Promise<TrainingPhone> {
  training ??= await openTraining(theRecord(), samples());
  return training;
}

/** Whoever signs out leaves training too: the next person begins in the record. */
effect(() => {
  const isSignedIn = theRecord().who.value !== undefined;
  if (inTraining.peek() && !isSignedIn) leaveTraining();
});

/** Every screen works on training from here on. Rejects with the store's trouble, and then nothing has changed. */
export async function enterTraining(): Promise<void> {
  const phone = await openOnce();
  await phone.remember(SHOW_MEAN, (await theRecord().recall(SHOW_MEAN)) === true);
  filedNow.value = undefined;
  showTraining(true);
  usePhoneOf(phone);
}

/** Back to the record; what was made in training stays there. */
export function leaveTraining(): void {
  filedNow.value = undefined;
  showTraining(false);
  usePhoneOf(theRecord());
}

/** Everything made in training is taken away, and the samples are there anew. */
export async function startTrainingAnew(): Promise<void> {
  filedNow.value = undefined;
  await (await openOnce()).startAnew();
}
