/* *Add animal* from the round, fetched when it is asked for: its fields are no part of the first paint. */
import type { ComponentProps, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { say } from "../../contract/words";
import type { AddAnimal } from "./add_animal";
import { Page } from "../page";

type Shown = typeof AddAnimal;

export function Adding(props: ComponentProps<Shown>): JSX.Element {
  const [Form, setForm] = useState<Shown | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    import("./add_animal").then((found) => setForm(() => found.AddAnimal), () => setFailed(true));
  }, []);
  if (Form) return <Form {...props} />;
  return <Page title={say("add-animal-title")}>{failed && <p role="alert">{say("not-loaded")}</p>}</Page>;
}
