/* Is this phone ready to work without a network? What the self-test found last, for the round and for *This phone*.
   The test itself is loaded when it is run. */
import { signal } from "@preact/signals";
import type { Bag, Facts, Finding } from "../../offline/self_test";
import { bagInUse, bodyOf } from "../bag/bag_in_use";
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

/** Of the record, in training too: it is the real day that is prepared. */
async function bagKnown(): Promise<Bag> {
  const { bags, chosen } = await bagInUse(theRecord());
  if (bags.length > 0 && !chosen) return "unchosen";
  if (chosen) return (bodyOf(chosen).cuffs ?? []).length > 0 ? "ok" : "no";
  const widths = await theRecord().recall("bag"); // what the first build kept in place of bags
  return typeof widths === "string" && widths.trim() !== "" ? "ok" : "no";
}

/** Runs the whole self-test. Never rejects. */
export async function checkReadiness(): Promise<void> {
  try {
    const { browserSelfTest, gather, judge } = await import("../../offline/self_test");
    const facts = await gather(browserSelfTest(), await bagKnown().catch(() => "no" as const));
    readiness.value = { facts, findings: judge(facts), at_ms: Date.now() };
  } catch {
    /* The test itself could not be fetched: without a network and before all files were kept. The round says nothing then. */
  }
}
