"""The forms of an animal's page. What there is to be seen on it comes from its visits, in result.py and last_time.py."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from demo.walk import Place, Walk, to_animal


def _unfold(title: str, button: str) -> Callable[[Walk], None]:
    """A fold of the animal's page, and the button by which its form opens."""

    def steps(walk: Walk) -> None:
        to_animal(walk)
        walk.page.get_by_text(title, exact=True).first.click()
        walk.tap(button)

    return steps


PLACES: Sequence[Place] = (
    Place("patient-sites", _unfold("Sites not to be used", "Add a site")),
    Place("patient-handling", _unfold("Handling", "Save handling")),
    Place("patient-who", _unfold("Who it is", "Change or add")),
)
