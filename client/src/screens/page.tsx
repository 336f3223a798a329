/* The frame of every screen but Measure: head, heading, content; says its title to the window and takes the focus. */
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { say } from "../contract/words";
import { Head } from "../parts/head";
import { thePhone } from "./place";
import { StatusLine } from "./status_line";

interface Props {
  title: string;
  /** Where the way back leads; absent on the patient list itself. */
  back?: string;
  /** Something on the page must be mended first: the window's title says so. */
  wrong?: boolean;
  children?: ComponentChildren;
}

export function Page({ title, back = "#/round", wrong, children }: Props): JSX.Element {
  const main = useRef<HTMLElement>(null);
  const { who, status } = thePhone();
  useEffect(() => {
    document.title = say(wrong ? "page-title-error" : "page-title", { page: title });
  }, [title, wrong]);
  useEffect(() => {
    main.current?.focus({ preventScroll: true });
  }, [title]);
  return (
    <div class="page">
      <a class="link skip" href="#content" onClick={(event) => { event.preventDefault(); main.current?.focus(); }}>
        {say("skip-to-content")}
      </a>
      <Head unsent={who.value ? status.value.unsent : undefined}>
        {who.value && back && (
          <a class="link" href={back}>
            {say("back-to-patients")}
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
