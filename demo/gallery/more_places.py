"""Screens that only the invented practice can show: its animals, its bags, a whole visit with its time between the readings.

FIRST comes right after the first screen of a person who has signed in, before any draft lies above the animals; MORE comes after
all of demo/places, for the same walk. It must not expect anything of a screen but that it is there.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from demo.walk import Place, Walk, to_round

SEARCH = "Find by name, mark or number"
QUIET_MS, GAP_MS = 11 * 60_000, 42_000


def _read(walk: Walk) -> None:
    """Both are folded on Round: opened, read, and gone."""
    for title, done in (("Before you rely on it", "I have read this"), ("Put it on the home screen first", "Go on in the browser")):
        walk.page.get_by_role("heading", name=title).click()
        walk.tap(done)
    walk.button("Go on in the browser").wait_for(state="detached")


def _practice(walk: Walk) -> None:
    to_round(walk)
    walk.page.get_by_role("link", name="Marrow").first.wait_for()


def _found(walk: Walk) -> None:
    to_round(walk)
    walk.fill(SEARCH, "kennel")
    walk.page.get_by_role("link", name="Marrow").first.wait_for(state="detached")


def animal(name: str) -> Callable[[Walk], None]:
    """The page of an animal of the practice."""

    def steps(walk: Walk) -> None:
        to_round(walk)
        walk.fill(SEARCH, "")
        walk.page.get_by_role("link", name=re.compile(f"^{name}(?!:)")).last.click()
        walk.sees("heading", name)

    return steps


def _worked_out(walk: Walk) -> None:
    animal("Quill")(walk)
    walk.page.get_by_text("How this was worked out").first.click()


def _form(fold: str, button: str, save: str) -> Callable[[Walk], None]:
    """A form of an animal's page, opened in its fold."""

    def steps(walk: Walk) -> None:
        walk.page.get_by_text(fold, exact=True).first.click()
        walk.page.get_by_role("button", name=button).first.click()
        walk.sees("button", save)

    return steps


def _finish(walk: Walk) -> None:
    walk.tap("Finish")
    walk.sees("region", "Result")


def _quiet_over(walk: Walk) -> None:
    walk.to("#/bag", "Bag")
    walk.page.get_by_role("radio", name="Home visits").first.click(force=True)
    animal("Marrow")(walk)
    walk.tap("Measure")
    walk.tap("Show Calm")
    walk.page.get_by_role("radio", name=re.compile("^Calm")).first.click(force=True)
    walk.choose("State", "Awake")
    walk.tap("Start quiet time")
    walk.sees("button", "Stop")
    walk.page.clock.fast_forward(QUIET_MS)


def _cuff_taken(walk: Walk) -> None:
    walk.tap("Show Cuff")
    walk.page.get_by_role("button", name=re.compile("^As last time")).first.click()
    walk.page.get_by_role("button", name=re.compile("^Cuff 28 mm"), expanded=False).wait_for()


def _readings_in_time(walk: Walk) -> None:
    walk.tap("Show Readings")
    for count, reading in enumerate((158, 152, 148, 150, 146, 148, 150), 1):
        walk.page.get_by_label("Systolic", exact=True).click()
        walk.page.keyboard.type(str(reading))
        walk.page.keyboard.press("Enter")
        walk.sees("button", "1 reading" if count == 1 else f"All {count} readings")
        walk.page.clock.fast_forward(GAP_MS)


def _bag(walk: Walk) -> None:
    walk.to("#/bag", "Bag")
    walk.page.get_by_role("radio", name="Shelter bag").first.click(force=True)
    walk.shows("28 mm")


def _bag_thing(walk: Walk) -> None:
    walk.tap("Add gauge")
    walk.sees("button", "Put into the bag")


FIRST: Sequence[Place] = (
    Place("round-cautions-read", _read),
    Place("practice-round", _practice),
    Place("practice-found", _found),
    Place("practice-long-course", animal("Marrow")),
    Place("practice-who-form", _form("Who it is", "Change or add", "Save changes"), alone=False),
    Place("practice-worked-out", _worked_out),
    Place("practice-bites", animal("Burdock")),
    Place("practice-bruises", animal("Tallow")),
    Place("practice-site-form", _form("Sites not to be used", "Add a site", "Save site"), alone=False),
    Place("practice-limb-missing", animal("Ruffle")),
    Place("practice-kitten", animal("Pepperpot")),
    Place("practice-above-gauge", animal("Mistral")),
    Place("practice-not-today", animal("Ember")),
    Place("practice-no-cuff", animal("Dumpling")),
    Place("practice-machine", animal("Maple")),
)

MORE: Sequence[Place] = (
    Place("bag-shelter", _bag),
    Place("bag-shelter-gauge", _bag_thing, alone=False),
    # a whole visit as it should be, the time between put on by hand
    Place("visit-quiet-over", _quiet_over),
    Place("visit-cuff", _cuff_taken, alone=False),
    Place("visit-readings", _readings_in_time, alone=False),
    Place("visit-result", _finish, alone=False),
)
