/* A shortcut of the home screen while the app is open already: the window is brought to the front (launch_handler in the
   manifest), and it is for us to go where the shortcut points. A plain start goes nowhere: what is open stays open. */
import { go } from "./route";

interface Launches {
  setConsumer(consumer: (launch: { targetURL?: string }) => void): void;
}

/** Follows shortcuts from now on, where the browser tells of them. */
export function followLaunches(): void {
  const launches = (globalThis as { launchQueue?: Launches }).launchQueue;
  launches?.setConsumer(({ targetURL }) => {
    const { hash } = new URL(targetURL ?? location.href);
    if (hash && hash !== location.hash) go(hash);
  });
}
