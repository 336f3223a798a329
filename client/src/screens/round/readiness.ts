/* Is this phone ready to work without a network? What the self-test found last, for the round and for *This phone*.
   The test itself is loaded when it is run. */
import { signal } from "@preact/signals";
import type { Bag1 as Bag } from "../../contract/wire_types";
import type { BagCard } from "../../offline/journal";
import type { Finding, Facts } from "../../offline/self_test";
import { theRecord } from "../place";

export interface Readiness {
  facts: Facts;
  findings: readonly Finding[];
  at_ms: number;
}

/** undefined until it has been run in this window. */
export const readiness = signal<Readiness | undefined>(undefined);

/** Is everything there? undefined while that is not known. */
export function isReady(): boolean | undefined {
  return readiness.value?.findings.every(({ ok }) => ok);
}

async function knowsBag(): Promise<boolean> {
  const record = theRecord();
  const widths = await record.recall("bag"); // what the first build kept in place of bags
  const hasCuffs = ({ letter }: BagCard): boolean => ((letter.body as Bag).cuffs ?? []).length > 0;
  return (await record.bags()).some(hasCuffs) || (typeof widths === "string" && widths.trim() !== "");
}

/** Runs the whole self-test. Never rejects. */
export async function checkReadiness(): Promise<void> {
  try {
    const { browserSelfTest, gather, judge } = await import("../../offline/self_test");
    const facts = await gather(browserSelfTest(), await knowsBag().catch(() => false));
    readiness.value = { facts, findings: judge(facts), at_ms: Date.now() };
  } catch {
    /* The test itself could not be fetched: without a network and before all files were kept. The round says nothing then. */
  }
}
