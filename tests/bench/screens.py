"""How quick are the screens on a slow phone? Run by hand: python -m tests.bench.screens [--help]

Chromium at 360 × 740 with its processor slowed down (six times unless told otherwise). Three figures: from a key of the number pad to its
digit on the screen (each digit durable before it is painted); from a cold start without a network to the usable Round; and the first
load over 150 ms and 1.6 Mbit/s (largest contentful paint, layout shift, long tasks). Decides nothing; it prints what was measured, beside
the goals, and the machine's own pace, since "six times slower" means little without it.
"""

from __future__ import annotations

import argparse
import platform
import statistics
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import BrowserContext, CDPSession, Page, Playwright, sync_playwright

from tests.field import work
from tests.field.phone import QUIET, Phone, chromium_path
from tests.field.server_process import ServerProcess

BETWEEN_KEYS_MS, AFTER_ADD_MS = 350, 900
GOALS = {"key": 100, "start": 1500, "lcp": 2500, "cls": 0.05, "tbt": 200}
FIRST_LOAD = {"offline": False, "latency": 150, "downloadThroughput": 1_600_000 / 8, "uploadThroughput": 750_000 / 8}

# From the touch (the event's own time stamp) to the first frame after the digit stands in its field. The page is not asked at every
# frame whether it does, which would itself cost frames: the field tells it when it is written to.
KEYS = """
window.keyTimes = [];
let touched;
addEventListener('click', (event) => {
  const key = event.target.closest('button');
  if (key && /^[0-9]$/.test(key.textContent.trim())) touched = event.timeStamp;
}, true);
const text = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value');
Object.defineProperty(HTMLInputElement.prototype, 'value', { ...text, set(next) {
  text.set.call(this, next);
  if (this.id !== 'pad-systolic' || touched === undefined || next === '') return;
  const from = touched;
  touched = undefined;
  requestAnimationFrame(() => {
    const painted = new MessageChannel();
    painted.port1.onmessage = () => window.keyTimes.push(performance.now() - from);
    painted.port2.postMessage(0);
  });
} });
"""
# In the page, from the first frame it owns: what was painted largest, what moved, how long the thread was held.
LOAD = """
window.seen = { lcp: 0, cls: 0, tbt: 0 };
new PerformanceObserver((list) => list.getEntries().forEach((e) => { seen.lcp = e.startTime; seen.what = e.element?.tagName; }))
  .observe({ type: 'largest-contentful-paint', buffered: true });
new PerformanceObserver((list) => list.getEntries().forEach((e) => { if (!e.hadRecentInput) seen.cls += e.value; }))
  .observe({ type: 'layout-shift', buffered: true });
new PerformanceObserver((list) => list.getEntries().forEach((e) => { seen.tbt += Math.max(0, e.duration - 50); }))
  .observe({ type: 'longtask', buffered: true });
"""
# When the search field of Round is there, from the very beginning of the navigation.
USABLE = """
(() => {
  const look = () => {
    const field = document.getElementById('search');
    if (!field || !field.offsetHeight) return requestAnimationFrame(look);
    requestAnimationFrame(() => { window.usable = performance.now(); });
  };
  look();
})();
"""
# Sums in a fixed time: how quick this machine is, with and without the brake.
PACE = "() => { const end = performance.now() + 200; let n = 0, x = 1; while (performance.now() < end) { for (let i = 0; i < 1000; i++) x = (x * 16807) % 2147483647; n++; } return n; }"


@contextmanager
def browser(playwright: Playwright, profile: Path, scripts: list[str]) -> Iterator[BrowserContext]:
    """A cold browser on a profile that stays."""
    context = playwright.chromium.launch_persistent_context(
        str(profile), executable_path=chromium_path(), headless=True, args=QUIET,
        viewport={"width": 360, "height": 740}, device_scale_factor=2, has_touch=True, is_mobile=True, locale="en-GB")
    for script in scripts:
        context.add_init_script(script)
    try:
        yield context
    finally:
        context.close()


def slowed(page: Page, times: int) -> CDPSession:
    """The page's processor slowed down by so many times."""
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": times})
    return session


def first_load(playwright: Playwright, url: str, folder: Path, times: int) -> dict[str, float]:
    """A first visit with empty caches: LCP and TBT in ms, CLS as a share."""
    with browser(playwright, folder, [LOAD]) as context:
        page = context.new_page()
        session = slowed(page, times)
        session.send("Network.enable")
        session.send("Network.emulateNetworkConditions", FIRST_LOAD)
        page.goto(url, wait_until="load")
        page.get_by_role("heading", level=1).first.wait_for()
        page.wait_for_timeout(3000)
        return page.evaluate("seen")


def prepared(playwright: Playwright, url: str, profile: Path) -> None:
    """Signs a phone in and waits until it can start without a network."""
    phone = Phone(playwright, profile, url, [])
    phone.open()
    work.sign_in(phone)
    for name in ("Ada", "Berta", "Ceri"):
        work.add_animal(phone, "Dog", name, f"kennel {name[0]}")
        phone.page.goto(url + "/#/round")
    phone.page.wait_for_timeout(1500)
    phone.close()


def offline_start(playwright: Playwright, url: str, profile: Path, times: int) -> float:
    """Ms from the navigation of a cold browser without a network to the usable Round; the browser's own start is not in it."""
    with browser(playwright, profile, [USABLE]) as context:
        context.set_offline(True)
        page = context.new_page()
        slowed(page, times)
        page.goto(url, wait_until="load")
        page.wait_for_function("() => window.usable > 0")
        return page.evaluate("window.usable")


def middles(page: Page, names: list[str]) -> dict[str, tuple[float, float]]:
    """Where the buttons of these names are; looked up once, since looking for a role by name would itself hold the page's thread."""
    boxes = {name: page.get_by_role("button", name=name, exact=True).bounding_box() for name in names}
    return {name: (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2) for name, box in boxes.items() if box}


def key_times(playwright: Playwright, url: str, profile: Path, times: int, readings: int) -> list[float]:
    """Ms from key to paint for three digits a reading, without a network, at about three taps a second."""
    with browser(playwright, profile, [KEYS]) as context:
        context.set_offline(True)
        page = context.new_page()
        page.goto(url, wait_until="load")
        page.get_by_role("button", name="A dog", exact=True).tap()
        page.get_by_role("button", name="Show Readings", exact=True).tap()
        at = middles(page, [*"0123456789", "Add"])
        slowed(page, times)
        for n in range(readings):
            for key in [*str(140 + n % 20), "Add"]:
                page.touchscreen.tap(*at[key])
                page.wait_for_timeout(AFTER_ADD_MS if key == "Add" else BETWEEN_KEYS_MS)
        taken = page.evaluate("window.keyTimes")
        assert len(taken) == readings * 3, f"{len(taken)} of {readings * 3} digits were painted"
        return taken


def pace(playwright: Playwright, folder: Path, times: int) -> tuple[int, int]:
    """Thousands of sums in 200 ms, without and with the brake."""
    with browser(playwright, folder, []) as context:
        page = context.new_page()
        free = page.evaluate(PACE)
        slowed(page, times)
        return free, page.evaluate(PACE)


def line(what: str, value: float, goal: float, unit: str = "ms") -> str:
    """One figure beside its goal, as a ratio."""
    return f"{what:<46} {value:9.2f} {unit:<3} goal {goal:>7} ratio {value / goal:.2f}"


def percentile95(values: list[float]) -> float:
    """The value that 95 of 100 do not exceed."""
    return statistics.quantiles(values, n=20, method="inclusive")[-1]


def main() -> None:
    """Measures and prints."""
    ask = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    ask.add_argument("--slower", type=int, default=6, help="how many times slower the processor shall seem (default 6)")
    ask.add_argument("--times", type=int, default=5, help="first loads and offline starts; the median is told (default 5)")
    ask.add_argument("--readings", type=int, default=14, help="readings of three digits, all in one set (default 14, at most 40)")
    told = ask.parse_args()
    with tempfile.TemporaryDirectory() as folder_name, sync_playwright() as playwright:
        folder = Path(folder_name)
        (folder / "server").mkdir()
        server = ServerProcess(folder / "server")
        server.found()
        server.start()
        try:
            free, braked = pace(playwright, folder / "pace", told.slower)
            print(f"{platform.machine()}, {platform.system()}; {free} thousand sums in 200 ms, slowed down {braked}", flush=True)
            loads = [first_load(playwright, server.url, folder / f"first{n}", told.slower) for n in range(told.times)]
            prepared(playwright, server.url, folder / "phone")
            starts = [offline_start(playwright, server.url, folder / "phone", told.slower) for _ in range(told.times)]
            keys = key_times(playwright, server.url, folder / "phone", told.slower, told.readings)
        finally:
            server.kill()
    print(line("first load, largest contentful paint, median", statistics.median(one["lcp"] for one in loads), GOALS["lcp"]))
    print(line("first load, layout shift, worst", max(one["cls"] for one in loads), GOALS["cls"], ""))
    print(line("first load, blocking time, median", statistics.median(one["tbt"] for one in loads), GOALS["tbt"]))
    print(line("cold start without a network, median", statistics.median(starts), GOALS["start"]))
    print(line(f"key to paint, 95th percentile of {len(keys)}", percentile95(keys), GOALS["key"]))
    print(line("key to paint, median", statistics.median(keys), GOALS["key"]))


if __name__ == "__main__":
    started = time.monotonic()
    main()
    print(f"took {time.monotonic() - started:.0f} s")
