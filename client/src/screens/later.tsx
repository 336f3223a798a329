/* Screens that are not needed for the first paint, loaded on their own and once. They are fetched as soon as the phone is idle,
   so that a network lost right after the first visit takes none of them away; the worker keeps them for later starts. */
import type { ComponentType, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { say } from "../contract/words";
import { Page } from "./page";

type Screen = ComponentType<{ id: string }>;
type Name = "measure" | "patient" | "outbox" | "bag" | "help" | "training" | "this-phone";

const LOADERS: Record<Name, () => Promise<Screen>> = {
  measure: async () => (await import("./measure/measure")).Measure,
  patient: async () => (await import("./animal/patient")).PatientPage,
  outbox: async () => (await import("./outbox/outbox")).Outbox,
  bag: async () => (await import("./bag/bag")).Bag,
  help: async () => (await import("./phone/help")).Help,
  training: async () => (await import("./phone/training")).Training,
  "this-phone": async () => (await import("./phone/this_phone")).ThisPhone,
};

const loaded = new Map<Name, Screen>();

async function load(name: Name): Promise<Screen> {
  const screen = loaded.get(name) ?? (await LOADERS[name]());
  loaded.set(name, screen);
  return screen;
}

/** Fetches every screen; resolves when all are there, rejects when one could not be had. */
export async function loadAll(): Promise<void> {
  await Promise.all((Object.keys(LOADERS) as Name[]).map(load));
}

/** A screen by name; while it is fetched, an empty page, and a sentence when it cannot be had. */
export function Later({ screen, id }: { screen: Name; id: string }): JSX.Element {
  const [Shown, setShown] = useState<Screen | undefined>(() => loaded.get(screen));
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    if (!Shown) load(screen).then((found) => setShown(() => found), () => setFailed(true));
  }, [screen]);
  if (Shown) return <Shown id={id} />;
  return <Page title={say("app-name")}>{failed && <p role="alert">{say("not-loaded")}</p>}</Page>;
}
