"""A visit up to its cuff: Ready?, Calm and Cuff in each state, as a hand comes to them one after the other.

It stops before the first reading; what follows is in readings.py.
"""

from __future__ import annotations

from collections.abc import Sequence

from demo.walk import Place, Walk, to_animal


def _ready(walk: Walk) -> None:
    to_animal(walk)
    walk.tap("Measure")
    walk.sees("button", "Show Ready?")


def _ready_no(walk: Walk) -> None:
    walk.choose("Free of pain?", "No")
    walk.choose("Safe to handle?", "No")
    walk.shows("Try one of these, or do not measure today:")


def _help_first(walk: Walk) -> None:
    walk.choose("Breathing easy?", "No")
    walk.sees("button", "Measure all the same")


def _why_not_today(walk: Walk) -> None:
    walk.tap("Not today")
    walk.sees("heading", "Why not today?")


def _not_today(walk: Walk) -> None:
    walk.tap("Bite or scratch")
    walk.shows("Not measured today:")


def _calm(walk: Walk) -> None:
    walk.tap("Go on measuring")
    walk.tap("Measure all the same")
    walk.tap("Show Calm")
    walk.sees("group", "Demeanour")


def _quiet(walk: Walk) -> None:
    walk.tap("Start quiet time")
    walk.sees("button", "Stop")


def _calm_more(walk: Walk) -> None:
    walk.tap("More")
    walk.tap("Drugs on board")
    walk.tap("Add a drug")
    walk.tap("Steroid")
    walk.sees("button", "Remove Steroid")


def _calmed(walk: Walk) -> None:
    walk.choose("State", "Calmed by a drug")
    walk.sees("group", "Group of the drug")


def _cuff(walk: Walk) -> None:
    walk.tap("Show Cuff")
    walk.sees("group", "Method")


def _cuff_problem(walk: Walk) -> None:
    walk.unfold("Limb")
    walk.fill("Limb circumference", "thirteen")
    walk.tap("Next: readings")
    walk.sees("heading", "There is a problem")


def _cuff_mended(walk: Walk) -> None:
    walk.fill("Limb circumference", "8.5")
    walk.shows("= 85 mm")


def _delete_draft(walk: Walk) -> None:
    to_animal(walk)
    walk.tap("Measure")
    walk.tap("Show Ready?")
    walk.tap("Delete this draft")
    walk.sees("button", "Delete it")


def _deleted(walk: Walk) -> None:
    walk.tap("Delete it")
    walk.sees("heading", "Round")


PLACES: Sequence[Place] = (
    Place("measure-ready", _ready),
    Place("measure-ready-no", _ready_no, alone=False),
    Place("measure-help-first", _help_first, alone=False),
    Place("measure-why-not-today", _why_not_today, alone=False),
    Place("measure-not-today", _not_today, alone=False),
    Place("measure-calm", _calm, alone=False),
    Place("measure-calm-quiet", _quiet, alone=False),
    Place("measure-calm-more", _calm_more, alone=False),
    Place("measure-calm-drug", _calmed, alone=False),
    Place("measure-cuff", _cuff, alone=False),
    Place("measure-cuff-problem", _cuff_problem, alone=False),
    Place("measure-cuff-mended", _cuff_mended, alone=False),
)

# after the readings, so that there is something to lose; the animal's next visit begins anew
DELETED: Sequence[Place] = (
    Place("measure-delete", _delete_draft),
    Place("round-deleted", _deleted, alone=False),
)
