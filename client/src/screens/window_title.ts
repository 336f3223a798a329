/* What the window is called: the page, that something on it must be mended first, and that all of it is training. */
import { effect, signal } from "@preact/signals";
import { say } from "../contract/words";
import { summariesShown } from "../parts/problems";
import { inTraining } from "../parts/training_ground";

const named = signal<{ page: string; isWrong: boolean } | undefined>(undefined);

effect(() => {
  if (!named.value) return;
  const { page, isWrong } = named.value;
  const title = say(isWrong || summariesShown.value > 0 ? "page-title-error" : "page-title", { page });
  document.title = inTraining.value ? say("page-title-training", { title }) : title;
});

/**
 * Names the window after a page. Whatever form of it shows a summary of what must be mended, the title says so for as long as that
 * stands there; `isWrong` is for what is told beside its field alone.
 */
export function nameWindow(page: string, isWrong: boolean | undefined): void {
  named.value = { page, isWrong: isWrong === true };
}
