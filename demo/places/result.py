"""Each result there is, and its way into the record. The readings are invented; no figure here is a rule's."""

from __future__ import annotations

from collections.abc import Sequence

from demo.walk import Place, Walk, to_animal, to_result


def _choose_animal(walk: Walk) -> None:
    walk.tap("File")
    walk.sees("heading", "Which animal was this?")


def _filed(walk: Walk) -> None:
    walk.page.get_by_role("button", name=f"Choose {walk.animal}").first.click()
    walk.tap("File")
    walk.shows("Filed:")


def _patient_with_a_visit(walk: Walk) -> None:
    to_animal(walk)
    walk.page.get_by_text("How this was worked out").first.click()


PLACES: Sequence[Place] = (
    # the first does not count; means of the rest by hand: 128, 146, 168, 198
    Place("result-minimal", to_result("dog", 140, 128, 127, 129, 126, 130)),
    Place("result-low", to_result("dog", 150, 146, 145, 147, 144, 148)),
    Place("result-moderate", to_result("cat", 180, 168, 167, 169, 166, 170)),
    Place("result-high", to_result("cat", 205, 198, 197, 199, 196, 200)),
    Place("result-too-few", to_result("dog", 150, 142)),
    Place("result-scattered", to_result("cat", 236, 190, 238, 192, 234, 191, 236)),
    Place("result-low-pressure", to_result("dog", 99, 95, 96, 94, 98, 97)),
    Place("result-sedated", to_result("dog", 158, 151, 153, 150, 154, 152, state="Sedated")),
    Place("result-coming-down", to_result("cat", 190, 184, 176, 168, 160, 154, 148)),
    Place("file-choose-animal", _choose_animal, alone=False),
    Place("round-filed", _filed, alone=False),
    Place("patient-visit", _patient_with_a_visit),
)
