/* Which build and which rules this phone works by: what to say when something is to be reported. */
import type { JSX } from "preact";
import { sayHelp } from "../../contract/help_words";
import { ruleSet } from "../../contract/rule_documents";

/** The build names its first script by its content, so that name tells one build from another. */
function buildOf(page: Document): string {
  const address = page.querySelector<HTMLScriptElement>("script[src]")?.src ?? "";
  return /-([\w-]{8})\.js$/.exec(address)?.[1] ?? sayHelp("build-not-known");
}

export function Versions(): JSX.Element {
  return (
    <dl>
      <dt>{sayHelp("version-rules")}</dt>
      <dd>{ruleSet().name}</dd>
      <dt>{sayHelp("version-build")}</dt>
      <dd>{buildOf(document)}</dd>
    </dl>
  );
}
