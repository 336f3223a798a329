/* Whether a newer build can be had now, for the line that offers it. Must not decide when it may take over. */
import { signal } from "@preact/signals";

/** What a tap does to have the newer build; undefined when there is none. */
export const update = signal<(() => void) | undefined>(undefined);
