/* Which of the four words an entry of this phone goes by. */
import type { OutboxEntry } from "../../offline/journal";
import type { State } from "../../parts/state_word";

/** The state shown: a waiting entry that was set aside after failures of its own needs a person too. */
export function shownState(entry: Pick<OutboxEntry, "state" | "code">, sending: boolean): State {
  if (entry.state !== "waiting") return entry.state;
  if (entry.code) return "set_aside";
  return sending ? "sending" : "waiting";
}
