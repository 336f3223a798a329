/* The page of all parts, each in each of its states, for looking at while they are made: `npm run parts`. Development only: it is built
   by a run of its own, and nothing of it reaches the app.
   In its address `?look=dim` chooses the look, `&hand=left` the hand, `&training=yes` the ground, `&part=series` one part alone,
   `&screen=outbox-needs-you` a whole screen in a state that no hand can bring about. */
import { render } from "preact";
import "../look/tokens.css";
import "../look/base.css";
import "../look/parts.css";
import "../look/measure.css";
import "../look/readings.css";
import "../look/series.css";
import "../look/drawings.css";
import "../look/calm.css";
import "../look/cuff.css";
import "../look/result.css";
import "../look/round.css";
import "../look/help.css";
import { say } from "../contract/words";
import { chooseHand, HANDS } from "../parts/hand";
import { chooseLook, LOOKS } from "../parts/look";
import { showTraining } from "../parts/training_ground";
import { usePhoneOf } from "../screens/place";
import { AskedParts } from "./asked_parts";
import { DrawnParts } from "./drawn_parts";
import { ResultParts } from "./result_parts";
import { EMPTY_PHONE } from "./standing_in";
import { standFor, WholeScreen } from "./whole_screens";

const asked = new URLSearchParams(location.search);

/** Leaves one part, and says which parts there are in the page's own data. */
function leave(part: string | null): void {
  for (const each of document.querySelectorAll<HTMLElement>("[data-part]")) each.hidden = part !== null && each.dataset["part"] !== part;
}

chooseLook(LOOKS.find((one) => one === asked.get("look")) ?? "day");
chooseHand(HANDS.find((one) => one === asked.get("hand")) ?? "right");
showTraining(asked.get("training") === "yes");

function drawParts(): void {
  usePhoneOf(EMPTY_PHONE);
  render(
    <main class="page main">
      <h1>{say("app-name")}</h1>
      <AskedParts />
      <DrawnParts />
      <ResultParts only={asked.get("result")} />
    </main>,
    document.body,
  );
  leave(asked.get("part"));
}

function drawScreen(name: string): void {
  standFor(name);
  render(<WholeScreen name={name} />, document.body);
}

const screen = asked.get("screen");
if (screen === null) drawParts();
else drawScreen(screen);
