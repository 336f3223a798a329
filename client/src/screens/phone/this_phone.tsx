/* This phone: is it ready to work without a network, how it looks and lies in the hand, what the practice chose to show while
   measuring, who works on it. Must not hold anything of an animal. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { sayHelp } from "../../contract/help_words";
import { say } from "../../contract/words";
import { BuzzChoice } from "../../parts/buzz_choice";
import { Choices } from "../../parts/choices";
import { chooseHand, hand, HANDS } from "../../parts/hand";
import { chooseLook, look, LOOKS } from "../../parts/look";
import { isInstalled } from "../round/install";
import { InstallWay } from "../round/install_hint";
import { Page } from "../page";
import { thePhone, theRecord } from "../place";
import { Prepare } from "./prepare";
import { SHOW_MEAN } from "./show_mean";
import { StorageProblem, storageWord } from "./storage_problem";
import { useRead } from "../use_read";
import { WhoHere } from "../who_here";

function LookChoice(): JSX.Element {
  const answers = LOOKS.map((value) => ({ value, label: say(`look-${value}`) }));
  return <Choices name="look" label={sayHelp("look-title")} answers={answers} value={look.value} onChoose={chooseLook} />;
}

function HandChoice(): JSX.Element {
  const answers = HANDS.map((value) => ({ value, label: say(`hand-${value}`) }));
  return <Choices name="hand" label={sayHelp("hand-title")} answers={answers} value={hand.value} onChoose={chooseHand} />;
}

/** Hidden unless the practice chooses otherwise: seeing the mean steers what people set aside. */
function MeanChoice(): JSX.Element {
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const shown = useRead(() => theRecord().recall(SHOW_MEAN)) === true;
  const answers = (["hide", "show"] as const).map((value) => ({ value, label: sayHelp(`mean-${value}`) }));
  const choose = (value: "hide" | "show"): void => {
    const both = new Set([theRecord(), thePhone()]); // in training it holds there too
    Promise.all([...both].map((phone) => phone.remember(SHOW_MEAN, value === "show"))).catch((failure: unknown) => setTrouble(storageWord(failure)));
  };
  return (
    <>
      <Choices name="mean" label={sayHelp("mean-title")} answers={answers} value={shown ? "show" : "hide"} onChoose={choose} />
      <p class="small">{sayHelp("mean-why")}</p>
      <StorageProblem word={trouble} />
    </>
  );
}

function Install(): JSX.Element {
  return (
    <section class="stack" aria-labelledby="install">
      <h2 id="install">{say("install-title")}</h2>
      {isInstalled.value ? <p>{sayHelp("install-done")}</p> : (
        <>
          <p>{say("install-why")}</p>
          <InstallWay />
        </>
      )}
    </section>
  );
}

export function ThisPhone(): JSX.Element {
  return (
    <Page title={say("this-phone-title")} help="offline">
      <Prepare />
      <Install />
      <section class="stack">
        <h2>{sayHelp("choices-title")}</h2>
        <LookChoice />
        <HandChoice />
        <BuzzChoice />
        <MeanChoice />
      </section>
      <a class="button wide" href="#/training">
        {say("training-title")}
      </a>
      <WhoHere />
    </Page>
  );
}
