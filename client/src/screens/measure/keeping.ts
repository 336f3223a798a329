/* What the parts of the Measure screen may do to the open measurement: act on it through the keeper, and nothing beside it. */
import { PhoneTrouble } from "../../offline/journal";
import type { Keeper } from "./keeper";
import type { Open } from "./open";

/** What the parts need of the keeper. */
export interface Keeping {
  act(change: (head: Open) => Open): Promise<void>;
  head(): Open;
  /** The newest state while it cannot be written. */
  unkept(): Open | undefined;
  retry(): Promise<void>;
}

/** Why something could not be kept, as the code of a sentence. */
export function troubleCode(failure: unknown): string {
  return failure instanceof PhoneTrouble ? failure.code : failure instanceof DOMException && failure.name === "QuotaExceededError" ? "full" : "not_kept";
}

/** The keeper of an open measurement, as its parts see it. */
export function keepingOf(keeper: Keeper<Open>): Keeping {
  return { act: keeper.act, head: keeper.head, unkept: () => keeper.unkept.value?.head, retry: keeper.retry };
}
