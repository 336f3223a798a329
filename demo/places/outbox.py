"""The outbox, with nothing that waits, with entries that wait for a network, and what is asked before somebody leaves with them.

An entry that needs a person cannot be had by a hand alone: that one stands on the page of all parts.
"""

from __future__ import annotations

from collections.abc import Sequence

from demo.walk import Place, Walk, to_animal, to_result


def _outbox(walk: Walk) -> None:
    walk.to("#/outbox", "Outbox")


def _filed_without_network(walk: Walk) -> None:
    walk.page.context.set_offline(True)
    to_result("cat", 238, 192, 236, 198, 240, 194, 234)(walk)
    walk.tap("File")
    walk.page.get_by_role("button", name=f"Choose {walk.animal}").first.click()
    walk.tap("File")
    walk.shows("Filed:")


def _patient_waiting(walk: Walk) -> None:
    to_animal(walk)
    walk.shows("Saved on this phone")


def _signing_out(walk: Walk) -> None:
    walk.to("#/this-phone", "This phone")
    walk.tap("Sign out")
    walk.sees("button", "Sign out all the same")


def _sent(walk: Walk) -> None:
    walk.page.context.set_offline(False)
    _outbox(walk)
    walk.tap("Send now")
    walk.shows("0 not sent")
    walk.shows("In the record")


PLACES: Sequence[Place] = (
    Place("outbox", _outbox),
    Place("round-filed-without-network", _filed_without_network),
    Place("outbox-waiting", _outbox, alone=False),
    Place("patient-waiting", _patient_waiting, alone=False),
    Place("this-phone-signing-out", _signing_out, alone=False),
    Place("outbox-sent", _sent, alone=False),
)
