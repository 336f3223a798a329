"""Walks one phone through every place and keeps a picture of each in each look, and a page that shows them side by side.

The phone's clock begins at the same moment every time, and the practice hangs on the same day, so that only what a machine's speed
changes differs from run to run. It must not judge what it sees.
"""

from __future__ import annotations

import argparse
import os
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from playwright.sync_api import Browser, Error, Page, sync_playwright

from demo.gallery.more_places import FIRST, MORE
from demo.gallery.own_server import Served, own_server
from demo.gallery.palette import as_palette_png
from demo.gallery.side_by_side import Shown, page_of
from demo.places import SIGNED_IN, SIGNED_OUT
from demo.play_in import LOGIN
from demo.walk import Place, Walk

HERE = Path(__file__).parent
LOOKS = ("day", "dim", "sun")
WIDTH_PX, HEIGHT_PX, SHARPNESS = 360, 740, 2
NOW = datetime(2026, 3, 4, 10, 20, tzinfo=UTC)  # a Wednesday morning
NEW_ANIMAL = "Tansy"  # none of the practice is called so
PLACES: Sequence[Place] = (*SIGNED_OUT, *SIGNED_IN[:1], *FIRST, *SIGNED_IN[1:], *MORE)
README = {"visit-readings": "readings", "visit-result": "result"}
README_LOOK, README_COLOURS = "day", 32
AFTER_MS = 250  # until what a tap began has been painted
PAINTED_MS = 50
_LOOSEN = """() => { for (const each of document.querySelectorAll("body *"))
    if (["fixed", "sticky"].includes(getComputedStyle(each).position)) { each.dataset.loosened = ""; each.style.position = "static"; } }"""
_FASTEN = """() => { for (const each of document.querySelectorAll("[data-loosened]"))
    { each.style.position = ""; delete each.dataset.loosened; } }"""
SLOWEST_MS = 10_000


@dataclass(frozen=True)
class Asked:
    """What to take, and where to; `only` empty for all, `readme` for the two pictures of README."""

    out: Path
    only: frozenset[str]
    readme: bool

    def wants(self, place: str) -> bool:
        """Whether a picture of this place is asked for."""
        return place in README if self.readme else not self.only or place in self.only


def read_arguments() -> Asked:
    """The command line; a name that no place has ends here with all of them."""
    names = [place.name for place in PLACES]
    parser = argparse.ArgumentParser(prog="python3 -m demo.gallery", description="A picture of every screen and state, in each look.")
    parser.add_argument("--out", type=Path, default=HERE / "pictures", help="folder of the pictures (demo/gallery/pictures)")
    parser.add_argument("--only", nargs="+", default=[], choices=names, metavar="NAME", help="only these: " + ", ".join(names))
    parser.add_argument("--readme", action="store_true", help="write only the two pictures that README shows, small")
    read = parser.parse_args()
    return Asked(read.out, frozenset(read.only), read.readme)


def phone_page(browser: Browser) -> Page:
    """A phone of the size the screens are made for, with less motion, at the fixed moment."""
    context = browser.new_context(
        viewport={"width": WIDTH_PX, "height": HEIGHT_PX}, device_scale_factor=SHARPNESS, has_touch=True, is_mobile=True,
        locale="en-GB", timezone_id="UTC", reduced_motion="reduce")
    context.set_default_timeout(SLOWEST_MS)
    page = context.new_page()
    page.clock.install(time=NOW)
    return page


def walk_and_take(walk: Walk, asked: Asked) -> list[Shown]:
    """Every place in turn; where one is not reached, those that begin with it are left out too, and all of them are told."""
    shown: list[Shown] = []
    is_lost = False
    for place in PLACES:
        if place.alone:
            is_lost = False
        trouble = "" if not is_lost else "begins where the one before it was not reached"
        if not is_lost:
            trouble = _steps(walk, place)
            is_lost = trouble != ""
        if asked.wants(place.name) or trouble:
            tall_px = 0 if trouble else _take(walk.page, place.name, asked)
            shown.append(Shown(place.name, tall_px, trouble))
    return shown


def _steps(walk: Walk, place: Place) -> str:
    """Goes there; gives what kept it from going."""
    try:
        place.steps(walk)
    except (Error, RuntimeError) as failure:
        return str(failure).split("\n")[0]
    return ""


def _take(page: Page, name: str, asked: Asked) -> int:
    """The whole page in each look; gives its height in CSS px. What sticks to the screen is laid where it belongs in a tall page."""
    page.mouse.move(0, 0)
    page.wait_for_timeout(AFTER_MS)
    tall_px = int(page.evaluate("document.documentElement.scrollHeight"))
    if not asked.readme and tall_px > HEIGHT_PX:
        page.evaluate(_LOOSEN)
    for look in LOOKS:
        _show_look(page, look)
        if not asked.readme:
            page.screenshot(path=asked.out / f"{name}-{look}.png", full_page=True)
        elif look == README_LOOK:
            (HERE / f"{README[name]}.png").write_bytes(as_palette_png(page, page.screenshot(), README_COLOURS))
    _show_look(page, LOOKS[0])
    page.evaluate(_FASTEN)
    return tall_px


def _show_look(page: Page, look: str) -> None:
    """By the key in the head, as a hand would, but without taking the focus from where it is."""
    for _ in LOOKS:
        if page.get_by_role("button", name=f"Look: {look}", exact=True).count() > 0:
            return
        page.get_by_role("button", name=re.compile("^Look: ")).first.evaluate("(key) => key.click()")
        page.wait_for_timeout(PAINTED_MS)
    raise RuntimeError(f"there is no look {look}")


def take_all(asked: Asked, served: Served) -> list[Shown]:
    """One browser, one walk."""
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=os.environ["CHROMIUM"], args=["--disable-gpu"])
        walk = Walk(phone_page(browser), served.url, LOGIN, served.password, NEW_ANIMAL)
        try:
            return walk_and_take(walk, asked)
        finally:
            browser.close()


def main() -> None:
    """Takes the pictures; ends with 1 where a place was not reached."""
    asked = read_arguments()
    asked.out.mkdir(parents=True, exist_ok=True)
    with own_server(NOW) as served:
        shown = take_all(asked, served)
    if not asked.readme:
        (asked.out / "index.html").write_text(page_of(shown, LOOKS, HEIGHT_PX), encoding="utf-8")
        print(f"{asked.out / 'index.html'}: {sum(not one.trouble for one in shown)} screens in {len(LOOKS)} looks")
    else:
        print("demo/gallery: " + ", ".join(f"{name}.png" for name in README.values()))
    lost = [f"{one.name}: {one.trouble}" for one in shown if one.trouble]
    if lost:
        raise SystemExit("not reached:\n  " + "\n  ".join(lost))


if __name__ == "__main__":
    main()
