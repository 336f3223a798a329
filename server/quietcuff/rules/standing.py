"""Rule 2, standing: what each reading of a set counts for.

Answers one word a reading. Must never remove a reading: a person sets aside, with a reason, and can undo it.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from typing import Any

Reading = Mapping[str, Any]

# Not yet counted, earlier or provisional: which of the three is known once the window is (rule 3).
ELIGIBLE = "eligible"


def systolic_above_mean_above_diastolic(reading: Reading) -> bool:
    """Among the values present each is strictly above the next; equal values break the order."""
    present = [
        reading[measure] for measure in ("systolic_mmhg", "mean_mmhg", "diastolic_mmhg") if measure in reading
    ]
    return all(upper > lower for upper, lower in pairwise(present))


ORDERS: dict[str, Callable[[Reading], bool]] = {
    "systolic_above_mean_above_diastolic": systolic_above_mean_above_diastolic,
}


def standings(readings: Sequence[Reading], document: Mapping[str, Any]) -> list[str]:
    """`by_hand`, `no_number`, `impossible`, `first` or ELIGIBLE for each reading; the first that applies.

    The order matters: what a person set aside is never called impossible, and only a good reading in position 1 is
    dropped as the first. Source: shared_schemas/rules/README.md, rule 2.
    """
    numbers = document["numbers"]
    is_in_order = ORDERS[document["choices"]["order"]]
    limits = [(measure + "_mmhg", low, high) for measure, (low, high) in numbers["possible_mmhg"].items()]
    not_counted = numbers["first_not_counted"]
    return [
        _standing(reading, limits, is_in_order) or ("first" if position < not_counted else ELIGIBLE)
        for position, reading in enumerate(readings)
    ]


def _standing(
    reading: Reading, limits: list[tuple[str, int, int]], is_in_order: Callable[[Reading], bool]
) -> str | None:
    if "set_aside" in reading:
        return "by_hand"
    if "beyond" in reading:
        return "no_number"
    for measure, low, high in limits:
        if measure in reading and not low <= reading[measure] <= high:
            return "impossible"
    return None if is_in_order(reading) else "impossible"


def final_standings(first_standings: Sequence[str], window_size: int) -> list[str]:
    """Turn each ELIGIBLE into `counted`, `earlier` or, with `window_size` 0, `provisional`.

    The window is always the latest `window_size` eligible readings, so counting from the end finds it.
    """
    final = list(first_standings)
    left = window_size
    for position in range(len(final) - 1, -1, -1):
        if final[position] != ELIGIBLE:
            continue
        if window_size == 0:
            final[position] = "provisional"
        else:
            final[position] = "counted" if left > 0 else "earlier"
            left -= 1
    return final


def stands_above_gauge(reading: Reading, standing: str) -> bool:
    """An attempt above the gauge that nobody set aside: it cannot be averaged, and cannot be ignored either."""
    return standing == "no_number" and reading["beyond"] == "above_gauge"
