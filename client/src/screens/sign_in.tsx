/* Sign in: login and password, once, with a network. Pasting and password managers work; what is wrong is said in the
   field's own words, what cannot be mended here is said apart. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { hasWords, say } from "../contract/words";
import { PhoneTrouble } from "../offline/journal";
import { Problems, Wrong, type Problem } from "../parts/problems";
import { kebab } from "../parts/word_ids";
import { FirstCautions } from "./first_cautions";
import { Page } from "./page";
import { thePhone } from "./place";
import { go } from "./route";

/** What a failed sign-in says: beside the form when it can be mended there, else as a line of its own. */
function toldOf(failure: unknown): { problems: Problem[]; line?: string } {
  const code = failure instanceof PhoneTrouble ? failure.code : "server_trouble";
  if (code === "wrong_login") return { problems: [{ field: "login", sentence: say("sign-in-wrong") }] };
  const word = [`network-${kebab(code)}`, `storage-${kebab(code)}`, `phone-${kebab(code)}`].find((one) => hasWords(one));
  return { problems: [], line: say(word ?? "sign-in-not-now") };
}

export function SignIn(): JSX.Element {
  const [problems, setProblems] = useState<Problem[]>([]);
  const [line, setLine] = useState<string | undefined>(undefined);
  const [working, setWorking] = useState(false);
  const [seen, setSeen] = useState(false);

  async function submit(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const [login, password] = [String(form.get("login") ?? "").trim(), String(form.get("password") ?? "")];
    const missing = [
      ...(login ? [] : [{ field: "login", sentence: say("ask-login") }]),
      ...(password ? [] : [{ field: "password", sentence: say("ask-password") }]),
    ];
    setProblems(missing);
    setLine(undefined);
    if (missing.length > 0) return;
    setWorking(true);
    try {
      await thePhone().signIn(login, password);
      go("#/patients", true);
    } catch (failure) {
      const told = toldOf(failure);
      setProblems(told.problems);
      setLine(told.line);
    } finally {
      setWorking(false);
    }
  }

  const wrong = (field: string): "true" | undefined => (problems.some((one) => one.field === field) ? "true" : undefined);
  return (
    <Page title={say("sign-in-title")} wrong={problems.length > 0}>
      <Problems problems={problems} />
      <form class="stack" noValidate onSubmit={(event) => void submit(event)}>
        <p class="quiet">{say("sign-in-hint")}</p>
        <div class="field" data-wrong={wrong("login")}>
          <label for="login">{say("sign-in-login")}</label>
          <Wrong field="login" problems={problems} />
          <input id="login" name="login" type="text" autocomplete="username" autocapitalize="off" autocorrect="off" spellcheck={false} aria-invalid={wrong("login")} aria-describedby={wrong("login") && "login-wrong"} />
        </div>
        <div class="field" data-wrong={wrong("password")}>
          <label for="password">{say("sign-in-password")}</label>
          <Wrong field="password" problems={problems} />
          <input id="password" name="password" {...(seen ? { type: "text" as const } : { type: "password" as const })} autocomplete="current-password" aria-invalid={wrong("password")} aria-describedby={wrong("password") && "password-wrong"} />
        </div>
        <button type="button" class="button" onClick={() => setSeen(!seen)}>
          {say(seen ? "sign-in-hide" : "sign-in-show")}
        </button>
        <button type="submit" class="button act wide" disabled={working}>
          {say("sign-in-button")}
        </button>
        <p role="status">{working ? say("sign-in-working") : line}</p>
      </form>
      <FirstCautions />
    </Page>
  );
}
