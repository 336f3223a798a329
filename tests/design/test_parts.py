"""The page of all parts: built by a run of its own, shows every part there is, and each part holds by itself what the screens hold.

Looks, targets, reflow and axe-core's rules are asked of parts in states that a walk through the screens does not come to.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.architecture.tree import CLIENT_SOURCE, ROOT, ours, shown
from tests.architecture.typescript_text import imports
from tests.design import asked
from tests.design.style_sheets import LOOKS

PAGE = CLIENT_SOURCE / "all_parts" / "page.tsx"
SIDE_BY_SIDE = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
"""Best practice is about one screen: here a dozen results stand one below the other."""


def _found(page: Page, file: str) -> Page:
    page.goto(page.url.split("?")[0] + file)
    page.get_by_role("heading", level=1).wait_for()
    return page


@pytest.mark.parametrize("look", LOOKS)
def test_every_part_in_every_look(parts: Page, look: str) -> None:
    """axe-core, contrast at 7:1 included, in the look chosen by the address."""
    page = _found(parts, f"?look={look}")
    assert page.evaluate("document.documentElement.dataset.look") == look
    assert asked.axe(page, SIDE_BY_SIDE) == []
    assert asked.unnamed(page) == []


def test_every_part_on_the_training_ground(parts: Page) -> None:
    """The other ground is far enough from every ink too."""
    page = _found(parts, "?training=yes&look=dim")
    assert asked.axe(page, ["cat.color"]) == []


def test_every_part_in_size_and_shape(parts: Page) -> None:
    """Targets at each width and at twice the text; nothing cut; no state by colour alone; nothing moves; only our colours."""
    page = _found(parts, "")
    assert asked.targets(page) == []
    for width, share in ((320, 100), (360, 200)):
        with asked.sized(page, width, text_share=share):
            assert asked.ask(page, "clipped", width) == []
    assert asked.ask(page, "colourOnly") == []
    assert asked.motion(page) == []
    assert asked.strange_colours(page) == []


def test_one_part_alone(parts: Page) -> None:
    """Chosen by the address."""
    page = _found(parts, "?part=series")
    assert page.get_by_role("region").evaluate_all("(all) => all.map((one) => one.getAttribute('aria-label'))") == ["series"]


def test_every_part_there_is_stands_on_it() -> None:
    """Whatever client/src/parts draws is reached from the page; a new part that is forgotten fails here."""
    reached: set[Path] = set()
    waiting = [PAGE]
    while waiting:
        file = waiting.pop()
        for module in imports(file):
            name = (file.parent / module.split("?")[0]).resolve()
            for target in (name.with_name(name.name + ending) for ending in ("", ".ts", ".tsx")):
                if target.is_file() and target.suffix in {".ts", ".tsx"} and target not in reached:
                    reached.add(target)
                    waiting.append(target)
    assert [shown(file) for file in ours(CLIENT_SOURCE / "parts", ".tsx") if file not in reached] == []


def test_it_wears_the_same_sheets_as_the_app() -> None:
    """In the same order, since a later rule wins over an earlier one."""
    sheets = [re.findall(r'import "\.{1,2}/look/(\w+)\.css"', file.read_text("utf-8")) for file in (CLIENT_SOURCE / "main.tsx", PAGE)]
    assert sheets[0] and sheets[0] == sheets[1]


def test_it_is_in_neither_the_app_nor_the_wheel() -> None:
    """The app's build and the wheel's list of folders do not know it."""
    assert "parts.html" not in (ROOT / "client" / "vite.config.ts").read_text("utf-8")
    assert "dist-parts" not in (ROOT / "server" / "build_client.py").read_text("utf-8")
    assert "client/dist-parts/" in (ROOT / ".gitignore").read_text("utf-8").splitlines()
