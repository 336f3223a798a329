/* ThisPhone: how this phone is set up and whether it is ready to work without a network. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { Page } from "./page";

export function ThisPhone(): JSX.Element {
  return <Page title={say("this-phone-title")} />;
}
