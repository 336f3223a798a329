/* Before the first entry: put the app on the home screen, and why then rather than later. Shown until it is there or somebody
   chose to go on in the browser. Must not stand in the way of a tap. */
import type { JSX } from "preact";
import { signal } from "@preact/signals";
import { say } from "../../contract/words";
import { inTraining } from "../../parts/training_ground";
import { askToInstall, installKind, isInstalled } from "./install";
import { Noted } from "./noted";

const PLACE = "quietcuff-in-browser";

function choseBrowser(): boolean {
  try {
    return localStorage.getItem(PLACE) === "yes";
  } catch {
    return false;
  }
}

const inBrowser = signal(choseBrowser());

function goOnInBrowser(): void {
  inBrowser.value = true;
  try {
    localStorage.setItem(PLACE, "yes");
  } catch {
    /* Asked again next time. */
  }
}

/** The way to the home screen: the browser's own question where it offers one, else how to find it. */
export function InstallWay(): JSX.Element {
  const ask = askToInstall.value;
  if (!ask) return <p>{say(`install-${installKind()}`)}</p>;
  return (
    <button type="button" class="button wide" onClick={() => void ask()}>
      {say("install-ask")}
    </button>
  );
}

/** The hint at the first screens; `folded` to a line where there is work to do above it. */
export function InstallHint({ folded }: { folded?: boolean }): JSX.Element | null {
  if (isInstalled.value || inBrowser.value || inTraining.value) return null;
  return (
    <Noted id="install-hint" title={say(folded ? "install-first" : "install-title")} folded={folded}>
      <p>{say("install-why")}</p>
      <InstallWay />
      <button type="button" class="button wide" onClick={goOnInBrowser}>
        {say("install-browser")}
      </button>
    </Noted>
  );
}
