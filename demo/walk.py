"""One phone on its way through the app: what a hand does, by roles and names, and what several places begin with.

It knows no place; the list of them is in places. It must not expect anything of a screen but that it is there.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page


@dataclass(frozen=True)
class Walk:
    """One phone on its way: `page`, the origin it talks to, how to sign in, and a known animal of its record."""

    page: Page
    url: str
    login: str
    password: str
    animal: str = "Marrow"

    def to(self, address: str, heading: str) -> None:
        """The screen of this hash, once its heading stands there."""
        self.page.goto(self.url + "/" + address)
        self.sees("heading", heading)

    def sees(self, role: str, name: str) -> None:
        """Waits for something of this role that bears this name."""
        self.page.get_by_role(role, name=name).first.wait_for()  # type: ignore[arg-type]  # roles are words here

    def button(self, name: str) -> Locator:
        """The button of exactly this name."""
        return self.page.get_by_role("button", name=name, exact=True).first

    def tap(self, name: str) -> None:
        """Taps it."""
        self.button(name).click()

    def choose(self, group: str, name: str) -> None:
        """One answer of a group of radio buttons. The answer may take the question away, so nothing is asked of it afterwards."""
        self.page.get_by_role("group", name=group).first.get_by_role("radio", name=name, exact=True).click(force=True)

    def unfold(self, question: str) -> None:
        """A question that is folded to one line with its answer, once it has folded."""
        self.page.get_by_role("button", name=f"{question} ", expanded=False).first.click()

    def fill(self, label: str, text: str) -> None:
        """Types into the field of this label."""
        self.page.get_by_label(label, exact=True).first.fill(text)

    def holds(self, label: str, text: str) -> None:
        """Waits until the field of this label holds this text: it paints only what is kept."""
        field = self.page.get_by_label(label, exact=True).first
        for _ in range(250):
            if field.input_value() == text:
                return
            self.page.wait_for_timeout(20)
        raise RuntimeError(f"{label} holds {field.input_value()!r}, not {text!r}")

    def shows(self, text: str) -> None:
        """Waits for a piece of text."""
        self.page.get_by_text(text).first.wait_for()


@dataclass(frozen=True)
class Place:
    """A screen in one state. `steps` lead there from the place before it in the list, or from anywhere when `alone`."""

    name: str
    steps: Callable[[Walk], None]
    alone: bool = True


# --- what several places begin with ----------------------------------------------------------------------------------------


def to_round(walk: Walk) -> None:
    """The list of animals."""
    walk.to("#/round", "Round")


def to_animal(walk: Walk) -> None:
    """The page of the known animal."""
    to_round(walk)
    # not its drafts, "Marrow: 4 readings": they stand there before the animals are read
    walk.page.get_by_role("link", name=re.compile(f"^{walk.animal}(?!:)")).last.click()
    walk.sees("heading", walk.animal)


def to_new_bag(walk: Walk) -> None:
    """On the page of bags, the form of one that is not there yet; where there is none, it stands there already."""
    another, name = walk.page.get_by_role("radio", name="Another bag"), walk.page.get_by_label("Name of the bag", exact=True)
    another.or_(name).first.wait_for()
    if another.count() > 0:
        another.click(force=True)


def begin(walk: Walk, species: str) -> None:
    """A measurement without an animal, at its first part."""
    to_round(walk)
    walk.tap(f"A {species}")
    walk.sees("button", "Show Readings")


def take(walk: Walk, *readings: int) -> None:
    """Readings by Doppler, typed on a keyboard; no two neighbours alike, since that is asked about as a second tap."""
    for count, reading in enumerate(readings, 1):
        walk.page.get_by_label("Systolic", exact=True).click()
        walk.page.keyboard.type(str(reading))
        walk.page.keyboard.press("Enter")
        walk.sees("button", "1 reading" if count == 1 else f"All {count} readings")


def to_result(species: str, *readings: int, state: str = "Awake") -> Callable[[Walk], None]:
    """A whole series up to its result."""

    def steps(walk: Walk) -> None:
        begin(walk, species)
        walk.tap("Show Calm")
        walk.choose("State", state)
        walk.tap("Show Readings")
        take(walk, *readings)
        walk.tap("Finish")
        walk.sees("region", "Result")

    return steps


def walked(walk: Walk, places: Sequence[Place]) -> Iterator[Place]:
    """Each place in the order given, once the phone stands there; raises with the place's name where it is not reached."""
    for place in places:
        try:
            place.steps(walk)
        except Exception as failure:
            raise RuntimeError(f"{place.name}: not reached") from failure
        yield place
