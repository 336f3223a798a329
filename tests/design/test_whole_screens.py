"""Whole screens in states that no hand can bring about, from the page of all parts: each is asked what every place of the walk is asked.

Which they are stands in client/src/all_parts/whole_screens.tsx. Sources as in test_screens.py.
"""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from tests.architecture.tree import CLIENT_SOURCE
from tests.design.conftest import QUESTIONS

LISTED = (CLIENT_SOURCE / "all_parts" / "whole_screens.tsx").read_text("utf-8")
SCREENS = re.findall(r'^  "([a-z-]+)": { phone:', LISTED, re.MULTILINE)


@pytest.fixture(params=SCREENS)
def screen(request: pytest.FixtureRequest, parts: Page) -> Page:
    """One of them, drawn; where its store refuses, a digit was typed and could not be kept."""
    parts.goto(f"{parts.url.split('?')[0]}?screen={request.param}")
    parts.get_by_role("heading", level=1).wait_for()
    if request.param == "measure-not-kept":
        parts.get_by_role("button", name="5", exact=True).click()
        parts.get_by_role("button", name="Try again").wait_for()
    else:
        parts.get_by_role("status").first.wait_for()
    return parts


def test_there_are_some() -> None:
    """None of them has fallen out of the list above."""
    assert len(SCREENS) == LISTED.count("draw: () => <")
    assert len(SCREENS) >= 5


def test_nothing_is_found(screen: Page) -> None:
    """All questions at each of them, the offer of a newer build included."""
    expect(screen.get_by_role("button", name="Use it now", exact=True)).to_be_visible()
    assert {question: faults for question, ask in QUESTIONS.items() if (faults := ask(screen))} == {}


def test_what_needs_a_person_comes_first_and_says_why(parts: Page) -> None:
    """Each entry says in words why it is where it is; five that need a person stand before those that do not."""
    parts.goto(f"{parts.url.split('?')[0]}?screen=outbox-needs-you")
    items = parts.get_by_role("listitem")
    items.nth(7).wait_for()
    states = [item.split("\n") for item in items.all_inner_texts()]
    needing = ["Needs you" in lines for lines in states]
    assert needing == [True] * needing.count(True) + [False] * needing.count(False)
    assert needing.count(True) == 5
    whys = [max(lines, key=len) for lines, needs in zip(states, needing, strict=True) if needs]
    assert all(len(why.split()) > 4 for why in whys), whys
