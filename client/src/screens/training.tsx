/* Training: the way into training, which never touches the record. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { Page } from "./page";

export function Training(): JSX.Element {
  return <Page title={say("training-title")} />;
}
