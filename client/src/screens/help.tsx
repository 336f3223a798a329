/* Help: what to do and what the words mean, without a network. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { Page } from "./page";

export function Help(): JSX.Element {
  return <Page title={say("help-title")} />;
}
