/* When a newer build may take over: at a tap, or at a cold start without a draft; never by itself under a thumb. */
import { beforeEach, describe, expect, it, vi } from "vitest";

class FakeWorker extends EventTarget {
  state = "installing";
  readonly heard: unknown[] = [];
  postMessage(word: unknown): void {
    this.heard.push(word);
  }
  become(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
  }
}

class FakeRegistration extends EventTarget {
  installing: FakeWorker | null = null;
  waiting: FakeWorker | null = null;
}

interface Page {
  readonly container: EventTarget;
  readonly registration: FakeRegistration;
  readonly reload: ReturnType<typeof vi.fn>;
  tap(): void;
  isOffered(): boolean;
  start(drafts: boolean): Promise<void>;
}

/** A page that is, or is not yet, served by a worker; modules are loaded anew, since they remember what was offered. */
async function page(controlled: boolean): Promise<Page> {
  vi.resetModules();
  const registration = new FakeRegistration();
  const container = Object.assign(new EventTarget(), {
    controller: controlled ? {} : null,
    register: vi.fn(() => Promise.resolve(registration)),
  });
  const reload = vi.fn();
  vi.stubGlobal("navigator", { serviceWorker: container });
  vi.stubGlobal("location", { reload });
  const { keepShell } = await import("../../client/src/worker");
  const { update } = await import("../../client/src/screens/phone/update");
  return {
    container,
    registration,
    reload,
    tap: () => update.value?.(),
    isOffered: () => update.value !== undefined,
    start: (drafts) => keepShell(() => Promise.resolve(drafts)),
  };
}

function changeOfController(container: EventTarget): void {
  container.dispatchEvent(new Event("controllerchange"));
}

describe("a newer build", () => {
  let here: Page;
  beforeEach(async () => {
    here = await page(true);
  });

  it("that waits is taken at a cold start without a draft, and the page loads again", async () => {
    const worker = (here.registration.waiting = new FakeWorker());
    await here.start(false);
    expect(worker.heard).toEqual(["take over"]);
    changeOfController(here.container);
    expect(here.reload).toHaveBeenCalledTimes(1);
  });

  it("that waits is only offered while there is a draft, and taken at a tap", async () => {
    const worker = (here.registration.waiting = new FakeWorker());
    await here.start(true);
    expect(worker.heard).toEqual([]);
    expect(here.isOffered()).toBe(true);
    here.tap();
    expect(worker.heard).toEqual(["take over"]);
  });

  it("that arrives later is offered when it is installed, not before", async () => {
    await here.start(false);
    const worker = (here.registration.installing = new FakeWorker());
    here.registration.dispatchEvent(new Event("updatefound"));
    expect(here.isOffered()).toBe(false);
    worker.become("installed");
    expect(here.isOffered()).toBe(true);
    expect(worker.heard).toEqual([]);
  });

  it("that was already arriving at the start is offered too", async () => {
    const worker = (here.registration.installing = new FakeWorker());
    await here.start(false);
    worker.become("installed");
    expect(here.isOffered()).toBe(true);
  });

  it("taken in another window does not load this one again before a tap", async () => {
    await here.start(true);
    changeOfController(here.container);
    expect(here.reload).not.toHaveBeenCalled();
    here.tap();
    expect(here.reload).toHaveBeenCalledTimes(1);
  });
});

it("the very first worker takes over without a word", async () => {
  const here = await page(false);
  const worker = (here.registration.installing = new FakeWorker());
  await here.start(false);
  worker.become("installed");
  changeOfController(here.container);
  expect(here.reload).not.toHaveBeenCalled();
});
