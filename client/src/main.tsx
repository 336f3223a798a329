/* Starts the app: look first, then the phone's record, then the screens; the worker that keeps the shell comes last.
   Must not draw anything of the record before it is open. */
import { render } from "preact";
import "./look/tokens.css";
import "./look/base.css";
import "./look/parts.css";
import "./look/measure.css";
import "./look/readings.css";
import "./look/series.css";
import "./look/drawings.css";
import "./look/calm.css";
import "./look/cuff.css";
import "./look/result.css";
import "./look/round.css";
import "./look/help.css";
import { hasWords, say } from "./contract/words";
import { openPhone, PhoneTrouble } from "./offline/journal";
import { showHand } from "./parts/hand";
import { showLook } from "./parts/look";
import { rememberTraining, wasTraining } from "./parts/training_ground";
import { App } from "./screens/app";
import { backToPlace } from "./screens/last_place";
import { loadAll } from "./screens/later";
import { followLaunches } from "./screens/launched";
import { thePhone, theRecord, usePhoneOf } from "./screens/place";
import { keepShell } from "./worker";

const ground = document.getElementById("quietcuff") as HTMLElement;

/** The other screens come after the first paint, so that they do not delay it. */
const LOAD_REST_AFTER_MS = 300;

/** What is said instead of the app when its record cannot be opened; a code without words gets the general sentence. */
function sayTrouble(failure: unknown): void {
  const word = failure instanceof PhoneTrouble ? `storage-${failure.code.replaceAll("_", "-")}` : "";
  render(
    <main class="main">
      <h1>{say("app-name")}</h1>
      <p role="alert">{say(hasWords(word) ? word : "not-opened")}</p>
    </main>,
    ground,
  );
}

/** An app ended in training starts in training; where that cannot be opened, the record is shown. */
async function comeBackToTraining(isSignedIn: boolean): Promise<void> {
  if (!isSignedIn) rememberTraining(false);
  else await import("./screens/phone/training_way").then((way) => way.showTrainingHere()).catch(() => rememberTraining(false));
}

/** Work begun and not filed, in the record or in training: no newer build may take its files away. */
async function hasDrafts(): Promise<boolean> {
  const drafts = await Promise.all([theRecord().drafts(), thePhone().drafts()]);
  return drafts.flat().length > 0;
}

async function start(): Promise<void> {
  showLook();
  showHand();
  try {
    const phone = await openPhone();
    usePhoneOf(phone);
    if (wasTraining()) await comeBackToTraining(phone.who.value !== undefined);
    await backToPlace(thePhone(), Date.now());
  } catch (failure) {
    sayTrouble(failure);
    return;
  }
  followLaunches();
  render(<App />, ground);
  setTimeout(() => void loadAll().catch(() => undefined), LOAD_REST_AFTER_MS);
  void keepShell(hasDrafts).catch(() => undefined);
}

void start();
