/* The way into training and out of it: another phone is handed to the screens, and the ground says so. Must not file or keep
   anything of what is measured. */
import { effect } from "@preact/signals";
import { sayHelp } from "../../contract/help_words";
import type { LetterParts } from "../../offline/journal";
import { openTraining, type TrainingPhone } from "../../offline/training";
import { inTraining, rememberTraining, showTraining } from "../../parts/training_ground";
import { filedNow } from "../round/filed";
import { theRecord, usePhoneOf } from "../place";
import { go } from "../route";
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

/** Every screen works on training from here on; for a start. Rejects with the store's trouble, and then nothing has changed. */
export async function showTrainingHere(): Promise<void> {
  const phone = await openOnce();
  await phone.remember(SHOW_MEAN, (await theRecord().recall(SHOW_MEAN)) === true);
  filedNow.value = undefined;
  showTraining(true);
  usePhoneOf(phone);
}

/**
 * The window is loaded anew, so that nothing begun on one side can end on the other. Where the browser does not remember which
 * side to start on, the phones are changed under the screens.
 */
function loadAnew(isOn: boolean): boolean {
  if (!rememberTraining(isOn)) return false;
  history.replaceState(null, "", "#/round");
  location.reload();
  return true;
}

/** Into training. Rejects with the store's trouble, and then nothing has changed. */
export async function enterTraining(): Promise<void> {
  await openOnce();
  if (loadAnew(true)) return;
  await showTrainingHere();
  go("#/round");
}

/** Back to the record; what was made in training stays there. */
export function leaveTraining(): void {
  if (loadAnew(false)) return;
  filedNow.value = undefined;
  showTraining(false);
  usePhoneOf(theRecord());
  go("#/round");
}

/** Everything made in training is taken away, and the samples are there anew. */
export async function startTrainingAnew(): Promise<void> {
  filedNow.value = undefined;
  await (await openOnce()).startAnew();
}
