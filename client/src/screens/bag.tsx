/* Bag: the cuffs, gauges, detectors and machines that are carried. */
import type { JSX } from "preact";
import { say } from "../contract/words";
import { Page } from "./page";

export function Bag(): JSX.Element {
  return <Page title={say("bag-title")} />;
}
