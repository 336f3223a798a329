/* What the window is called: the page, that something on it must be mended first, and that all of it is training. */
import { say } from "../contract/words";
import { inTraining } from "../parts/training_ground";

/** Names the window after a page. */
export function nameWindow(page: string, isWrong: boolean | undefined): void {
  const title = say(isWrong ? "page-title-error" : "page-title", { page });
  document.title = inTraining.value ? say("page-title-training", { title }) : title;
}
