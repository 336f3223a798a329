"""Where most is said at once above the keys, all of it fits on the screen of a phone, and nothing covers anything.

What is urgent, a machine's four fields, a second set, what was just undone, and a mark as wide as the screen: in every look.
Source: the least screen we build for, 360 × 740 px, in asked.py.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from demo.walk import take
from tests.design.asked import LOOKS, SIZE, show_look
from tests.design.places import Walk
from tests.field.server_process import PASSWORD, ServerProcess

MARK = "kennel 17, second row, window"
FIRST_SET = (238, 192, 236, 198, 240, 194, 234)


@pytest.fixture
def fullest(open_page: Page, server: ServerProcess) -> Iterator[Page]:
    """Readings with all of that at once."""
    walk = Walk(open_page, server.url, "ada", PASSWORD)
    walk.to("#/round", "Round")
    walk.tap("Add animal")
    open_page.get_by_role("radio", name="Cat", exact=True).check(force=True)
    walk.fill("Name", "Sorrel")
    walk.fill("Mark", MARK)
    walk.tap("Save animal")
    walk.tap("Measure")
    walk.tap("Show Readings")
    take(walk, *FIRST_SET)
    walk.tap("New set")
    open_page.get_by_role("button", name="Another method").click()
    for count, systolic in enumerate((*FIRST_SET, 220), len(FIRST_SET) + 1):
        walk.fill("Systolic", str(systolic))
        walk.fill("Diastolic", "130")
        walk.tap("Add")
        walk.sees("button", f"All {count}")
    walk.tap("Undo")
    walk.shows("Undone: ")
    yield open_page
    show_look(open_page, "day")


def test_all_of_it_fits(fullest: Page) -> None:
    """The page is no higher than the screen: the foot with the keys covers nothing of the row of readings."""
    assert fullest.viewport_size == SIZE
    expect(fullest.get_by_text("Look at eyes and behaviour now")).to_be_visible()
    for look in LOOKS:
        show_look(fullest, look)
        assert fullest.evaluate("document.documentElement.scrollHeight") == SIZE["height"], look
