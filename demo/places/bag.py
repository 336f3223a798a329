"""The bag: a first one packed and saved. It must not be asked what fits; that is the cuff's."""

from __future__ import annotations

from collections.abc import Sequence

from demo.walk import Place, Walk, to_new_bag


def _bag_with_cuffs(walk: Walk) -> None:
    to_new_bag(walk)
    walk.fill("Name of the bag", "Field bag")
    walk.fill("Add widths, in mm", "20, 25, 30, 40, 50")
    walk.tap("Add cuffs")
    walk.sees("button", "Change 25 mm")


def _bag_with_a_gauge(walk: Walk) -> None:
    walk.tap("Add gauge")
    walk.sees("button", "Put into the bag")


def _saved(walk: Walk) -> None:
    walk.tap("Leave as it was")
    walk.tap("Save bag")
    walk.button("Save bag").wait_for()
    walk.page.get_by_text("Changed, and not in the bag yet").wait_for(state="detached")


PLACES: Sequence[Place] = (
    Place("bag", lambda walk: walk.to("#/bag", "Bag")),
    Place("bag-cuffs", _bag_with_cuffs, alone=False),
    Place("bag-gauge", _bag_with_a_gauge, alone=False),
    Place("bag-saved", _saved, alone=False),
)
