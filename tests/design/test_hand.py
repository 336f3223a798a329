"""Laid out for the left hand, the words beside the digits stand on the other side; the digits keep their order in both."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

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
    one.page.get_by_role("radio", name="right hand").click(force=True)


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
    walk.page.get_by_role("radio", name="right hand").click(force=True)
    right = keys(walk)
    assert right["1"] < right["2"] < right["3"] < right["Delete digit"] == right["Undo"]
    walk.to("#/this-phone", "This phone")
    walk.page.get_by_role("radio", name="left hand").click(force=True)
    walk.page.reload()
    left = keys(walk)
    assert left["Delete digit"] == left["Undo"] < left["1"] < left["2"] < left["3"]
    assert ask(walk.page, "smallTargets", LEAST_PX, LEAST_IN_READINGS_PX) == []
    assert ask(walk.page, "closeTargets", GAP_PX, GAP_IN_READINGS_PX) == []
