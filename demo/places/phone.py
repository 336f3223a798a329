"""Help, training, this phone, and addresses that lead nowhere."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from demo.walk import Place, Walk, to_result, to_round


def _in_training(walk: Walk) -> None:
    walk.tap("Begin training")
    to_round(walk)
    walk.shows("Training: not the record")


def _out_of_training(walk: Walk) -> None:
    walk.to("#/training", "Training")
    walk.tap("Back to the record")
    to_round(walk)


def _screen(address: str, heading: str) -> Callable[[Walk], None]:
    return lambda walk: walk.to(address, heading)


PLACES: Sequence[Place] = (
    Place("help", _screen("#/help", "Help")),
    Place("help-cuff", _screen("#/help/cuff", "Help")),
    Place("training", _screen("#/training", "Training")),
    Place("training-round", _in_training, alone=False),
    Place("training-result", to_result("cat", 150, 146, 145, 147, 144, 148), alone=False),
    Place("round", _out_of_training, alone=False),
    Place("this-phone", _screen("#/this-phone", "This phone")),
    Place("nowhere", _screen("#/nowhere", "quietcuff")),
    Place("draft-missing", _screen("#/measure/none", "Measure")),
)
