/* One run of an act at a time: a second tap while the first is on its way to the disk would file the same thing twice. Pure.
   Must not swallow what the act throws. */

/** Does the work unless it is under way already. `busy` is kept by whoever asks, for as long as its button is shown. */
export async function oneAtATime(busy: { current: boolean }, work: () => Promise<unknown>): Promise<void> {
  if (busy.current) return;
  busy.current = true;
  try {
    await work();
  } finally {
    busy.current = false;
  }
}
