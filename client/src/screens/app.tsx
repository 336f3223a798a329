/* Which screen is shown: by the route, and *Sign in* while nobody ever signed in here. Must not hold anything typed. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { inTraining } from "../parts/training_ground";
import { Later } from "./later";
import { Page } from "./page";
import { thePhone } from "./place";
import { Round } from "./round/round";
import { route } from "./route";
import { SignIn } from "./sign_in";
import { UpdateLine } from "./phone/update_line";

export function App(): JSX.Element {
  return (
    <>
      <UpdateLine />
      <Screen key={inTraining.value ? "training" : "record"} />
    </>
  );
}

function Screen(): JSX.Element {
  const at = route.value;
  if (at.at === "help") return <Later key="help" screen="help" id={at.id} />;
  if (!thePhone().who.value || at.at === "sign-in") return <SignIn />;
  switch (at.at) {
    case "round":
      return <Round />;
    case "outbox":
    case "bag":
    case "training":
    case "this-phone":
      return <Later key={at.at} screen={at.at} id="" />;
    case "patient":
      return <Later key={at.id} screen="patient" id={at.id} />;
    case "measure":
      return <Later key={at.id} screen="measure" id={at.id} />;
    default:
      return (
        <Page title={say("app-name")}>
          <p>{say("not-a-page")}</p>
        </Page>
      );
  }
}
