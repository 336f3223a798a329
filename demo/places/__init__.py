"""Every screen and state of the app, and the steps that lead there: names, roles and words only, as a person finds them.

Used by whoever has to see all screens: the checks under tests/design and the pictures of the gallery. It stands in the demo,
because the demo may not lean on the tests and both need the same list. One file for each place of the app, in the order of the walk.
"""

from __future__ import annotations

from collections.abc import Sequence

from demo.places import bag, last_time, measure, outbox, patient, phone, readings, result
from demo.places.round import ADDED, FIRST, SIGNED_OUT
from demo.walk import Place

SIGNED_IN: Sequence[Place] = (
    *FIRST, *ADDED, *patient.PLACES, *measure.PLACES, *readings.PLACES, *measure.DELETED, *readings.SERIES,
    *result.PLACES, *bag.PLACES, *last_time.PLACES, *outbox.PLACES, *phone.PLACES,
)

PLACES: Sequence[Place] = (*SIGNED_OUT, *SIGNED_IN)
