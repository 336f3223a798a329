"""Asks a page in a real browser about itself: rules for everybody's reach, targets, reflow, states without colour, motion.

The questions stand in in_page.js, and axe-core's rules are run beside them; both are handed in past the content security policy,
which lets no script in. It decides nothing but what is asked; each test says what must not be found.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from typing import Any

from playwright.sync_api import Page

from tests.architecture.tree import ROOT
from tests.design.style_sheets import LOOKS, tokens

SIZE = {"width": 360, "height": 740}
WIDTHS = (320, 360, 412)
LEAST_PX, LEAST_IN_READINGS_PX, GAP_PX, GAP_IN_READINGS_PX = 44, 60, 8, 6
# WCAG 2.2, 1.4.12: what a reader may set without loss
SPACING = {"line-height": "1.5", "letter-spacing": "0.12em", "word-spacing": "0.16em"}
AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
_CONTROL = re.compile(r"^\s*- '?(button|link|textbox|searchbox|radio|checkbox|combobox|switch|slider|spinbutton|tab)( \[[^\]]*\])*'?:?$")


@cache
def _source(name: str) -> str:
    return (ROOT / name).read_text(encoding="utf-8")


def ask(page: Page, question: str, *facts: Any) -> list[str]:
    """The faults one function of in_page.js finds."""
    return page.evaluate(f"(facts) => ({_source('tests/design/in_page.js')}).{question}(...facts)", list(facts))


def axe(page: Page, tags: list[str] = AXE_TAGS) -> list[str]:
    """What axe-core's rules with these tags find, one line for each element; contrast is asked at 7:1 too."""
    if not page.evaluate("Boolean(window.axe)"):
        page.evaluate(_source("client/node_modules/axe-core/axe.min.js"))
    found = page.evaluate(
        """async (tags) => {
            const asked = { runOnly: tags, rules: { "color-contrast-enhanced": { enabled: true } }, resultTypes: ["violations"] };
            const { violations } = await axe.run(document, asked);
            return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id} (${help}): ${target.join(" ")}`));
        }""", tags)
    return list(found)


def show_look(page: Page, look: str) -> None:
    """One of the three looks, by what the app itself would set."""
    page.evaluate("(look) => { document.documentElement.dataset.look = look; }", look)


@contextmanager
def sized(page: Page, width: int, height: int = 740, *, text_share: int = 100) -> Iterator[None]:
    """The page at another size of the screen, and of its text in percent, for a moment."""
    page.set_viewport_size({"width": width, "height": height})
    page.evaluate("(px) => { document.documentElement.style.fontSize = px; }", f"{16 * text_share // 100}px")
    yield
    page.evaluate("document.documentElement.style.fontSize = ''")
    page.set_viewport_size(SIZE)  # type: ignore[arg-type]  # its type is a literal's


@contextmanager
def spaced(page: Page) -> Iterator[None]:
    """The page with the spacing of WCAG 1.4.12 on every element, for a moment."""
    page.evaluate(
        """(spacing) => { for (const each of document.querySelectorAll("body, body *"))
            for (const [name, value] of Object.entries(spacing)) each.style.setProperty(name, value, "important"); }""", SPACING)
    yield
    page.evaluate(
        """(spacing) => { for (const each of document.querySelectorAll("body, body *"))
            for (const name of Object.keys(spacing)) each.style.removeProperty(name); }""", SPACING)


def targets(page: Page) -> list[str]:
    """Too small or too near each other, at each width and with text twice as large."""
    found = []
    for width, share in (*((width, 100) for width in WIDTHS), (360, 200)):
        with sized(page, width, text_share=share):
            faults = [*ask(page, "smallTargets", LEAST_PX, LEAST_IN_READINGS_PX), *ask(page, "closeTargets", GAP_PX, GAP_IN_READINGS_PX)]
        found += [f"at {width} px, {share} %: {fault}" for fault in faults]
    return found


def reflow(page: Page) -> list[str]:
    """Lost or out of reach at 320 px, with text twice as large, with a reader's spacing, lying on its side."""
    found = []
    for width, height, share in ((320, 740, 100), (360, 740, 200), (320, 740, 200), (740, 360, 100)):
        with sized(page, width, height, text_share=share):
            faults = [*ask(page, "clipped", width), *ask(page, "outOfReach")]
        found += [f"at {width} × {height}, {share} %: {fault}" for fault in faults]
    with sized(page, 320), spaced(page):
        found += [f"at 320 px, wide spacing: {fault}" for fault in ask(page, "clipped", 320)]
    return found


def strange_colours(page: Page) -> list[str]:
    """In each look: colours that are not the look's own, and the accent where nothing is to be done."""
    found = []
    for look in LOOKS:
        show_look(page, look)
        known = tokens(look)
        accent = sorted({known["act"], known["act-ground"]} - {known["ink"]})
        found += [f"{look}: {fault}" for fault in ask(page, "strangeColours", sorted(set(known.values())), accent)]
    show_look(page, "day")
    return found


def unnamed(page: Page) -> list[str]:
    """Controls without a name in the tree that a screen reader is given."""
    tree = page.locator("body").aria_snapshot()
    return [line.strip() for line in tree.splitlines() if _CONTROL.match(line)]


def motion(page: Page) -> list[str]:
    """What moves or could move when less motion is asked for."""
    page.emulate_media(reduced_motion="reduce")
    found = ask(page, "moving")
    page.emulate_media(reduced_motion="no-preference")
    return found


def reach(page: Page) -> list[str]:
    """All of axe-core's rules in the look of the day, those about colour in the others too: looks differ in colours alone."""
    found = []
    for look in LOOKS:
        show_look(page, look)
        found += [f"{look}: {fault}" for fault in axe(page, AXE_TAGS if look == "day" else ["cat.color"])]
    show_look(page, "day")
    return found
