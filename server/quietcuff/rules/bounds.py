"""Rule 5, bounds: what can be said without an average.

Answers "all at least" and "all below". Must never be used where there is a window: then the average speaks.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from quietcuff.rules.standing import ELIGIBLE, Reading, stands_above_gauge

# A smallest of None: every one is above the gauge. A largest of None: at least one is.
Extremes = tuple[int | None, int | None]


def higher_than_any_number(numbers_mmhg: Sequence[int], above_gauge: int) -> Extremes:
    """Smallest and largest when attempts above the gauge stand above every number."""
    smallest = min(numbers_mmhg) if numbers_mmhg else None
    return smallest, None if above_gauge else max(numbers_mmhg)


ABOVE_GAUGE: dict[str, Callable[[Sequence[int], int], Extremes]] = {"higher_than_any_number": higher_than_any_number}


def bounds(
    readings: Sequence[Reading], standings: Sequence[str], document: Mapping[str, Any]
) -> dict[str, int] | None:
    """`at_least_mmhg` and `below_mmhg`, each only where there is one; None with neither or with too few readings.

    `standings` as rule 2 first gives them. Source: shared_schemas/rules/README.md, rule 5.
    """
    numbers = document["numbers"]
    extremes = ABOVE_GAUGE[document["choices"]["above_gauge"]]
    usable = usable_for_bounds(readings, standings)
    if len(usable) < numbers["least_readings"]:
        return None
    latest = usable[max(0, len(usable) - numbers["of_latest"]) :]
    values = [reading["systolic_mmhg"] for reading in latest if "beyond" not in reading]
    smallest, largest = extremes(values, len(latest) - len(values))
    found = {}
    reached = [edge for edge in numbers["at_least_mmhg"] if smallest is None or edge <= smallest]
    if reached:
        found["at_least_mmhg"] = max(reached)
    not_reached = [edge for edge in numbers["below_mmhg"] if largest is not None and edge > largest]
    if not_reached:
        found["below_mmhg"] = min(not_reached)
    return found or None


def usable_for_bounds(readings: Sequence[Reading], standings: Sequence[str]) -> list[Reading]:
    """Eligible readings, and attempts above the gauge that nobody set aside, in the order taken."""
    return [
        reading
        for reading, standing in zip(readings, standings, strict=True)
        if standing == ELIGIBLE or stands_above_gauge(reading, standing)
    ]


def decides(found: Mapping[str, int] | None, document: Mapping[str, Any]) -> bool:
    """Whether the bounds alone are enough to act on: every reading was at or above the deciding pressure.

    Raises ValueError when that pressure is no edge of `at_least_mmhg`: no bounds could ever name it.
    """
    numbers = document["numbers"]
    decides_from_mmhg = numbers["decides_from_mmhg"]
    if decides_from_mmhg not in numbers["at_least_mmhg"]:
        raise ValueError(f"bounds: {decides_from_mmhg} is no edge")
    return found is not None and found.get("at_least_mmhg", 0) >= decides_from_mmhg
