"""Readings: the keys, what lies over them, what a series comes to while it is taken. It begins where measure.py ends."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from demo.walk import Place, Walk, begin, take


def _readings_empty(walk: Walk) -> None:
    walk.tap("Show Readings")
    walk.sees("button", "Add")


def _readings(walk: Walk) -> None:
    take(walk, 168, 142, 138)
    walk.page.keyboard.type("14")
    walk.holds("Systolic", "14")


def _unlikely(walk: Walk) -> None:
    walk.fill("Systolic", "340")
    walk.tap("Add")
    walk.sees("button", "Keep")


def _reasons(walk: Walk) -> None:
    walk.tap("Fix")
    walk.tap("Set aside")
    walk.sees("heading", "Why set aside 138?")


def _all_readings(walk: Walk) -> None:
    walk.tap("Moved")
    walk.tap("All 3 readings")
    walk.page.get_by_role("button", name="Reading 2").click()
    walk.sees("button", "Back to the keys")


def _why_new_set(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.tap("New set")
    walk.sees("heading", "Why a new set?")


def _pulse(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.tap("Tap pulse")
    walk.sees("button", "Tap at each beat")


def _stop(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.tap("Stop")
    walk.sees("heading", "Why stop?")


def _second_tap(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.fill("Systolic", "140")
    # both at once in the page itself: a busy machine would let the time of a second tap go by
    walk.button("Add").evaluate("(add) => { add.click(); add.click(); }")
    walk.sees("button", "Once is right")


def _readings_several(walk: Walk) -> None:
    walk.tap("Once is right")
    walk.tap("New set")
    walk.page.get_by_role("button", name="Another method").click()
    walk.page.get_by_label("Diastolic", exact=True).wait_for()


def _series(*taken: int) -> Callable[[Walk], None]:
    """A cat nobody knows yet, and these readings."""

    def steps(walk: Walk) -> None:
        begin(walk, "cat")
        walk.tap("Show Readings")
        take(walk, *taken)

    return steps


def _second_look(walk: Walk) -> None:
    walk.page.get_by_role("button", name="Second look").click()
    walk.shows("Second look: ")


def _urgent_unfolded(walk: Walk) -> None:
    walk.page.get_by_text("Look at eyes and behaviour now").click()
    walk.shows("call a veterinarian now")


def _urgent_with_sheet(walk: Walk) -> None:
    walk.page.get_by_text("Look at eyes and behaviour now").click()
    walk.tap("Stop")
    walk.sees("heading", "Why stop?")


PLACES: Sequence[Place] = (
    Place("measure-readings-none", _readings_empty, alone=False),
    Place("measure-readings", _readings, alone=False),
    Place("measure-readings-unlikely", _unlikely, alone=False),
    Place("measure-readings-reasons", _reasons, alone=False),
    Place("measure-readings-all", _all_readings, alone=False),
    Place("measure-readings-new-set", _why_new_set, alone=False),
    Place("measure-readings-pulse", _pulse, alone=False),
    Place("measure-readings-stop", _stop, alone=False),
    Place("measure-readings-second-tap", _second_tap, alone=False),
    Place("measure-readings-machine", _readings_several, alone=False),
)

SERIES: Sequence[Place] = (
    Place("readings-coming-down", _series(190, 184, 176, 168, 160, 154)),
    Place("readings-agree", _series(158, 150, 146, 148, 150, 146, 148)),
    # 180 does not count; the mean of the rest is 168, and from 160 on the rules ask for a second look
    Place("readings-second-look", _series(180, 168, 167, 169, 166, 170)),
    Place("readings-second-look-running", _second_look, alone=False),
    # every one that counts is 180 or above, and they do not agree
    Place("readings-urgent", _series(238, 192, 236, 198, 240, 194, 234)),
    Place("readings-urgent-open", _urgent_unfolded, alone=False),
    Place("readings-urgent-sheet", _urgent_with_sheet, alone=False),
)
