/* The frame of every screen but Measure: head, heading, content; says its title to the window and takes the focus. */
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { say } from "../contract/words";
import { Head } from "../parts/head";
import { thePhone } from "./place";
import { StatusLine } from "./status_line";
import { nameWindow } from "./window_title";

interface Props {
  title: string;
  /** Where the way back leads, and what it is called; absent on the round itself. */
  back?: string;
  backWord?: string;
  /** The topic *Help* opens at. */
  help?: string;
  /** Something on the page must be mended first: the window's title says so. */
  wrong?: boolean;
  children?: ComponentChildren;
}

export function Page({ title, back = "#/round", backWord = "back-to-patients", help, wrong, children }: Props): JSX.Element {
  const main = useRef<HTMLElement>(null);
  const { who, status } = thePhone();
  useEffect(() => {
    nameWindow(title, wrong);
  }, [title, wrong]);
  useEffect(() => {
    main.current?.focus({ preventScroll: true });
  }, [title]);
  return (
    <div class="page">
      <a class="link skip" href="#content" onClick={(event) => { event.preventDefault(); main.current?.focus(); }}>
        {say("skip-to-content")}
      </a>
      <Head unsent={who.value ? status.value.unsent : undefined} help={help}>
        {back && (who.value || back === "#/sign-in") && (
          <a class="link" href={back}>
            {say(backWord)}
          </a>
        )}
      </Head>
      <main class="main" id="content" ref={main} tabIndex={-1}>
        <h1>{title}</h1>
        <StatusLine />
        {children}
      </main>
    </div>
  );
}
