"""Laid out for the left hand, the words beside the digits stand on the other side; the digits keep their order in both."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.design.asked import GAP_IN_READINGS_PX, GAP_PX, LEAST_IN_READINGS_PX, LEAST_PX, ask
from tests.design.places import Walk
from tests.field.server_process import PASSWORD, ServerProcess


@pytest.fixture
def walk(open_page: Page, server: ServerProcess) -> Iterator[Walk]:
    """On This phone, where the hand is chosen; laid out for the right hand again afterwards."""
    one = Walk(open_page, server.url, "ada", PASSWORD)
    one.to("#/this-phone", "This phone")
    yield one
    one.to("#/this-phone", "This phone")
    lay_out_for(one, "right hand")


def lay_out_for(walk: Walk, hand: str) -> None:
    """Tap this answer, once the page stands still: what it says of the phone comes in by and by and moves it."""
    radio = walk.page.get_by_role("radio", name=hand)
    walk.page.locator("label", has=radio).click()
    expect(radio).to_be_checked()


def start_of(page: Page, name: str) -> float:
    """Where this key begins, in px from the left edge of the screen."""
    box = page.get_by_role("button", name=name, exact=True).first.bounding_box()
    assert box is not None
    return box["x"]


def keys(walk: Walk) -> dict[str, float]:
    """Where some keys of the pad begin."""
    walk.to("#/round", "Round")
    walk.tap("A cat")
    walk.tap("Show Readings")
    walk.sees("button", "Delete digit")
    return {name: start_of(walk.page, name) for name in ("1", "2", "3", "Delete digit", "Undo")}


def test_words_of_the_pad_change_sides(walk: Walk) -> None:
    """Right: 1 2 3 and then the words. Left: the words and then 1 2 3. Kept for the next start."""
    lay_out_for(walk, "right hand")
    right = keys(walk)
    assert right["1"] < right["2"] < right["3"] < right["Delete digit"] == right["Undo"]
    walk.to("#/this-phone", "This phone")
    lay_out_for(walk, "left hand")
    walk.page.reload()
    left = keys(walk)
    assert left["Delete digit"] == left["Undo"] < left["1"] < left["2"] < left["3"]
    assert ask(walk.page, "smallTargets", LEAST_PX, LEAST_IN_READINGS_PX) == []
    assert ask(walk.page, "closeTargets", GAP_PX, GAP_IN_READINGS_PX) == []
