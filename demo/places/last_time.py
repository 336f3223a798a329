"""The second visit of one animal: the cuff as last time, and what is said where something differs today.

It needs a bag, and fits the width of last time to none in it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from demo.walk import Place, Walk, take, to_animal

NOT_IN_THE_BAG_MM = "37"


def _to_cuff(walk: Walk) -> None:
    to_animal(walk)
    walk.tap("Measure")
    walk.tap("Show Cuff")
    walk.sees("button", "Next: readings")


def _answered(walk: Walk) -> None:
    """Each question in turn; the one after opens by itself."""
    _to_cuff(walk)
    walk.choose("Site", "Above the elbow")
    walk.choose("Side", "Left")
    walk.fill("Limb circumference", "8.5")
    walk.choose("Cuff used, width in mm", "Other")
    walk.fill("Width used, in mm", NOT_IN_THE_BAG_MM)
    walk.page.keyboard.press("Tab")
    walk.choose("Posture", "In the lap")
    walk.shows(f"{NOT_IN_THE_BAG_MM} mm is ")


def _as_last_time(walk: Walk) -> None:
    walk.tap("Show Readings")
    take(walk, 158, 150, 146, 148, 150, 146)
    walk.tap("Finish")
    walk.tap("File")
    walk.shows("Filed:")
    _to_cuff(walk)
    walk.sees("button", "As last time")


def _barred(walk: Walk) -> None:
    to_animal(walk)
    walk.page.get_by_text("Sites not to be used", exact=True).first.click()
    walk.tap("Add a site")
    walk.choose("Site", "Above the elbow")
    walk.choose("Side", "Left")
    walk.choose("Why no cuff there", "Wound")
    walk.tap("Save site")
    walk.button("Save site").wait_for(state="detached")


def _differs(walk: Walk) -> None:
    _to_cuff(walk)
    walk.shows("What differs today")
    walk.shows("Above the elbow, Left, used last time, is not to be used")


def _taken(walk: Walk) -> None:
    walk.page.get_by_role("button", name=re.compile("^As last time")).first.click()
    walk.page.get_by_role("button", name=re.compile("^As last time")).wait_for(state="detached")
    walk.shows("What differs today")


PLACES: Sequence[Place] = (
    Place("cuff-answered", _answered),
    Place("cuff-as-last-time", _as_last_time, alone=False),
    Place("patient-site-barred", _barred),
    Place("cuff-differs", _differs),
    Place("cuff-differs-taken", _taken, alone=False),
)
