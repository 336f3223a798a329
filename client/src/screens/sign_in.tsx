/* Sign in: login and password, once, with a network. Pasting and password managers work; what is wrong is said in the
   field's own words, what cannot be mended here is said apart. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { hasWords, say } from "../contract/words";
import { PhoneTrouble } from "../offline/journal";
import { Problems, Wrong, type Problem } from "../parts/problems";
import { kebab } from "../parts/word_ids";
import { FirstCautions } from "./round/first_cautions";
import { InstallHint } from "./round/install_hint";
import { Page } from "./page";
import { thePhone } from "./place";
import { go } from "./route";

interface Told {
  problems: Problem[];
  line?: string;
}

/** What a failed sign-in says: beside the form when it can be mended there, else as a line of its own. */
function toldOf(failure: unknown): Told {
  const code = failure instanceof PhoneTrouble ? failure.code : "server_trouble";
  if (code === "wrong_login") return { problems: [{ field: "login", sentence: say("sign-in-wrong") }] };
  const word = [`network-${kebab(code)}`, `storage-${kebab(code)}`, `phone-${kebab(code)}`].find((one) => hasWords(one));
  return { problems: [], line: say(word ?? "sign-in-not-now") };
}

interface FieldProps {
  problems: readonly Problem[];
}

function wrong(field: string, problems: readonly Problem[]): { "aria-invalid"?: "true"; "aria-describedby"?: string } {
  return problems.some((one) => one.field === field) ? { "aria-invalid": "true", "aria-describedby": `${field}-wrong` } : {};
}

function LoginField({ problems }: FieldProps): JSX.Element {
  return (
    <div class="field" data-wrong={String("aria-invalid" in wrong("login", problems))}>
      <label for="login">{say("sign-in-login")}</label>
      <Wrong field="login" problems={problems} />
      <input id="login" name="login" type="text" autocomplete="username" autocapitalize="off" autocorrect="off" spellcheck={false} {...wrong("login", problems)} />
    </div>
  );
}

function PasswordField({ problems }: FieldProps): JSX.Element {
  const [seen, setSeen] = useState(false);
  return (
    <>
      <div class="field" data-wrong={String("aria-invalid" in wrong("password", problems))}>
        <label for="password">{say("sign-in-password")}</label>
        <Wrong field="password" problems={problems} />
        <input
          id="password"
          name="password"
          autocomplete="current-password"
          {...(seen ? { type: "text" as const } : { type: "password" as const })}
          {...wrong("password", problems)}
        />
      </div>
      <button type="button" class="button" onClick={() => setSeen(!seen)}>
        {say(seen ? "sign-in-hide" : "sign-in-show")}
      </button>
    </>
  );
}

/** Fields left empty, in their own words. */
function missing(login: string, password: string): Problem[] {
  return [
    ...(login ? [] : [{ field: "login", sentence: say("ask-login") }]),
    ...(password ? [] : [{ field: "password", sentence: say("ask-password") }]),
  ];
}

export function SignIn(): JSX.Element {
  const [told, setTold] = useState<Told>({ problems: [] });
  const [working, setWorking] = useState(false);

  async function submit(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const [login, password] = [String(form.get("login") ?? "").trim(), String(form.get("password") ?? "")];
    const problems = missing(login, password);
    setTold({ problems });
    if (problems.length > 0) return;
    setWorking(true);
    try {
      await thePhone().signIn(login, password);
      go("#/round", true);
    } catch (failure) {
      setTold(toldOf(failure));
    } finally {
      setWorking(false);
    }
  }

  return (
    <Page title={say("sign-in-title")} help="first" wrong={told.problems.length > 0}>
      <Problems problems={told.problems} />
      <form class="stack" noValidate onSubmit={(event) => void submit(event)}>
        <p class="quiet">{say("sign-in-hint")}</p>
        <LoginField problems={told.problems} />
        <PasswordField problems={told.problems} />
        <button type="submit" class="button act wide" disabled={working}>
          {say("sign-in-button")}
        </button>
        <p role="status">{working ? say("sign-in-working") : told.line}</p>
      </form>
      <InstallHint />
      <FirstCautions />
    </Page>
  );
}
