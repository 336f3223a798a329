/* Which screen is shown: by the route, and *Sign in* while nobody ever signed in here. Must not hold anything typed. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { Later } from "./later";
import { Page } from "./page";
import { Patients } from "./patients";
import { thePhone } from "./place";
import { route } from "./route";
import { SignIn } from "./sign_in";
import { UpdateLine } from "./update_line";

export function App(): JSX.Element {
  return (
    <>
      <UpdateLine />
      <Screen />
    </>
  );
}

function Screen(): JSX.Element {
  const at = route.value;
  if (!thePhone().who.value || at.at === "sign-in") return <SignIn />;
  switch (at.at) {
    case "patients":
      return <Patients />;
    case "outbox":
      return <Later key="outbox" screen="outbox" id="" />;
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
