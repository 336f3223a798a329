/* Can this app be put on the home screen, and by which way? Listens from the first moment on, since the browser says it once.
   Must not ask by itself: a browser that is asked unbidden is refused for good. */
import { signal } from "@preact/signals";

/** The browser's own offer, where it makes one (not every browser does; no standard says it must). */
interface InstallOffer extends Event {
  prompt(): Promise<{ outcome: "accepted" | "dismissed" }>;
}

/** What asks the browser to install; undefined where it has not offered that. */
export const askToInstall = signal<(() => Promise<void>) | undefined>(undefined);

/** Is this the app from the home screen, and no tab? */
export const isInstalled = signal(matchMedia("(display-mode: standalone)").matches || sharesToHome() === true);

/** Where the browser has a share button for it, this is `false` in a tab and `true` from the home screen. */
function sharesToHome(): boolean | undefined {
  return (navigator as { standalone?: boolean }).standalone;
}

/** Which words tell the way: by a share button, by the browser's menu on a phone, or by that of a larger machine. */
export function installKind(): "share" | "menu" | "desk" {
  if (sharesToHome() !== undefined) return "share";
  return matchMedia("(pointer: coarse)").matches ? "menu" : "desk";
}

addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  const offer = event as InstallOffer;
  askToInstall.value = async () => {
    askToInstall.value = undefined; // one offer can be asked once
    await offer.prompt();
  };
});

addEventListener("appinstalled", () => {
  askToInstall.value = undefined;
  isInstalled.value = true;
});
