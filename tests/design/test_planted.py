"""Each check of this folder fails when what it guards against is there: planted into the living page or a copy, and taken out again.

A check that cannot fail would be worse than none, since it would be believed.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.architecture.tree import CLIENT_SOURCE
from tests.design import asked
from tests.design.places import Walk
from tests.design.sheet_faults import colours, physical
from tests.design.test_words_in_code import texts_in
from tests.field.server_process import PASSWORD, ServerProcess


@pytest.fixture
def readings(open_page: Page, server: ServerProcess) -> Iterator[Page]:
    """The Readings of a dog; the page is loaded anew afterwards, which takes out what was planted."""
    walk = Walk(open_page, server.url, "ada", PASSWORD)
    walk.to("#/round", "Round")
    walk.tap("A dog")
    walk.tap("Show Readings")
    walk.sees("button", "Add")
    yield open_page
    open_page.reload()


def style(page: Page, selector: str, **values: str) -> None:
    """Sets these properties on everything the selector finds, past any rule; fails when it finds nothing."""
    found = page.evaluate(
        """([selector, values]) => {
            const all = [...document.querySelectorAll(selector)];
            for (const { style } of all)
                for (const [name, value] of Object.entries(values)) style.setProperty(name.replaceAll("_", "-"), value, "important");
            return all.length;
        }""", [selector, values])
    assert found > 0, f"nothing matches {selector}: plant it anew"


def test_the_page_is_clean_before(readings: Page) -> None:
    """What follows is told by the plants alone."""
    found = [*asked.axe(readings), *asked.unnamed(readings), *asked.targets(readings), *asked.ask(readings, "colourOnly"),
             *asked.ask(readings, "clipped", 360), *asked.ask(readings, "outOfReach"), *asked.motion(readings), *asked.strange_colours(readings)]
    assert found == []


def test_one_unnamed_button(readings: Page) -> None:
    """Seen by axe-core's rule and in the tree for screen readers."""
    readings.evaluate("[...document.querySelectorAll('.pad button')].find((key) => key.textContent === '5').textContent = ''")
    assert any(line.startswith("button-name") for line in asked.axe(readings))
    assert asked.unnamed(readings) == ["- button"]


def test_one_key_of_40_px(readings: Page) -> None:
    """Seen at each width."""
    readings.evaluate("[...document.querySelectorAll('.pad button')].find((key) => key.textContent === '0').id = 'planted'")
    style(readings, "#planted", min_block_size="40px", block_size="40px", align_self="start")
    found = [line for line in asked.targets(readings) if "× 40.0, not 60" in line]
    assert [line.split(":")[0] for line in found] == ["at 320 px, 100 %", "at 360 px, 100 %", "at 412 px, 100 %", "at 360 px, 200 %"]


def test_two_keys_that_touch(readings: Page) -> None:
    """Seen as a gap that is too small."""
    style(readings, ".pad-digits", gap="2px")
    assert any("1 and 2: 2.0 px, not 6" in line for line in asked.targets(readings))


def test_one_state_told_by_colour_alone(readings: Page) -> None:
    """The part that is open loses its thicker line and keeps another colour."""
    readings.evaluate(
        """() => { const plant = new CSSStyleSheet();
            plant.replaceSync(`.folds > .fold.fold.fold { border-block-end: 1px solid; padding-block-end: 0.25rem }
                .folds > .fold[aria-expanded="true"] { color: var(--act) }`);
            document.adoptedStyleSheets = [...document.adoptedStyleSheets, plant]; }""")
    assert asked.ask(readings, "colourOnly") == ["Show Readings: aria-expanded is told by colour alone"]


def test_one_chosen_answer_told_by_colour_alone(open_page: Page, server: ServerProcess) -> None:
    """Chosen and not chosen look alike in greys."""
    page = open_page
    walk = Walk(page, server.url, "ada", PASSWORD)
    walk.to("#/this-phone", "This phone")
    assert asked.ask(page, "colourOnly") == []
    style(page, ".choice span", box_shadow="none", font_weight="500", border_width="1px", outline="none")
    found = asked.ask(page, "colourOnly")
    page.reload()
    assert found and all("chosen is told by colour alone" in line for line in found)


def test_one_colour_that_is_none_of_ours(readings: Page) -> None:
    """A green word, and the accent on a word that is no action."""
    style(readings, ".verdict", color="rgb(0, 128, 0)")
    style(readings, ".pad-field label", color="var(--act)")
    found = asked.strange_colours(readings)
    assert "day: color #008000 on p.verdict" in found
    assert any("the accent on label" in line for line in found)


def test_one_text_that_sticks_out_and_one_key_out_of_reach(readings: Page) -> None:
    """A page that scrolls sideways, and something that lies over a key."""
    style(readings, ".verdict", white_space="nowrap", inline_size="60rem")
    assert any("px wide, not 360" in line for line in asked.ask(readings, "clipped", 360))
    readings.evaluate("[...document.querySelectorAll('.pad button')].find((key) => key.textContent === '0').style.pointerEvents = 'none'")
    assert asked.ask(readings, "outOfReach") == ["0 cannot be reached"]


def test_one_thing_that_moves(readings: Page) -> None:
    """Although less motion is asked for."""
    style(readings, ".key.add", transition="background 300ms")
    assert any("could move" in line for line in asked.motion(readings))


def test_one_physical_property_and_one_colour() -> None:
    """In a copy of a real sheet."""
    sheet = (CLIENT_SOURCE / "look" / "base.css").read_text(encoding="utf-8")
    assert physical(sheet) == [] and colours(sheet) == []
    assert physical(sheet.replace("padding-inline:", "padding-left:", 1)) != []
    assert colours(sheet.replace("color: var(--ink)", "color: black", 1)) == ["color: black"]


def test_one_sentence_outside_the_words(tmp_path: Path) -> None:
    """In a copy of a real screen."""
    text = (CLIENT_SOURCE / "screens" / "bag" / "bag.tsx").read_text(encoding="utf-8")
    copy = tmp_path / "bag.tsx"
    copy.write_text(text + "\nexport const Planted = () => <p>Choose the cuff first</p>;\n", encoding="utf-8")
    assert [line.split(" ", 1)[1] for line in texts_in([copy])] == ["Choose the cuff first"]
