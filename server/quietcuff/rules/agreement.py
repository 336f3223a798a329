"""Rule 3, agreement: do the readings of a set agree, and what now?

Answers window, verdict, suspects and advice. Must never say "settled": readings can agree and all be too high.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from quietcuff.rules.standing import ELIGIBLE, Reading, stands_above_gauge
from quietcuff.rules.whole_numbers import twice_median


class Agreement(NamedTuple):
    """What rule 3 says of a set; `window` is empty when there is none, `suspects` unless the verdict shows them."""

    verdict: str
    window: Sequence[Reading]
    readings_needed: int
    suspects: list[str]


def latest_consecutive(items: Sequence[Any], size: int) -> Sequence[Any]:
    """The latest `size` of them (fewer where there are no more)."""
    return items[max(0, len(items) - size) :]


WINDOWS: dict[str, Callable[[Sequence[Any], int], Sequence[Any]]] = {"latest_consecutive": latest_consecutive}
# Each gives twice the centre, so that the mean of the middle two stays whole.
CENTRES: dict[str, Callable[[Sequence[int]], int]] = {"median": twice_median}


def agreement(
    readings: Sequence[Reading], standings: Sequence[str], rhythm: str, document: Mapping[str, Any]
) -> Agreement:
    """Judge one set; `standings` as rule 2 first gives them, one for each reading.

    Source: shared_schemas/rules/README.md, rule 3.
    """
    numbers = document["numbers"]
    latest = WINDOWS[document["choices"]["window"]]
    centre = CENTRES[document["choices"]["centre"]]
    looked_at = _looked_at(readings, standings)
    is_irregular = rhythm == "irregular"
    limits = numbers["irregular_window" if is_irregular else "window"]
    if len(looked_at) < limits["least"]:
        return Agreement("too_few", (), limits["least"] - len(looked_at), [])
    if is_irregular:
        return Agreement("steady", latest(looked_at, limits["most"]), 0, [])
    values = [reading["systolic_mmhg"] for reading in looked_at]
    size = _window_size(values, latest, numbers)
    if size:
        return Agreement("steady", latest(looked_at, size), 0, [])
    return _without_window(looked_at, latest, centre, numbers)


def _looked_at(readings: Sequence[Reading], standings: Sequence[str]) -> list[Reading]:
    """The eligible readings after the latest attempt above the gauge: such an attempt cannot be averaged away."""
    looked_at: list[Reading] = []
    for reading, standing in zip(readings, standings, strict=True):
        if standing == ELIGIBLE:
            looked_at.append(reading)
        elif stands_above_gauge(reading, standing):
            looked_at.clear()
    return looked_at


def _window_size(values: list[int], latest: Callable[..., Sequence[int]], numbers: Mapping[str, Any]) -> int:
    """The largest window reached by growing from the least, stopping at the first that fails; 0 without one."""
    passed = 0
    for size in range(numbers["window"]["least"], min(numbers["window"]["most"], len(values)) + 1):
        window = latest(values, size)
        if not (is_even(window, numbers["even_permille"]) and has_stopped_falling(window, numbers["fall"])):
            break
        passed = size
    return passed


def is_even(window: Sequence[int], even_permille: int) -> bool:
    """(max - min) / mean is at most `even_permille`; the limit passes."""
    return (max(window) - min(window)) * len(window) * 1000 <= even_permille * sum(window)


def has_stopped_falling(window: Sequence[int], fall: Mapping[str, int]) -> bool:
    """The first half's mean is no more above the last half's than one step of a gauge, or a small share of all.

    Of an odd number the middle one belongs to neither half. Limits pass.
    """
    half = len(window) // 2
    drop_by_half = sum(window[:half]) - sum(window[len(window) - half :])
    if drop_by_half <= fall["mmhg"] * half:
        return True
    return drop_by_half * len(window) * 1000 <= fall["permille"] * half * sum(window)


def _without_window(
    looked_at: list[Reading],
    latest: Callable[..., Sequence[Any]],
    centre: Callable[[Sequence[int]], int],
    numbers: Mapping[str, Any],
) -> Agreement:
    """Scattered or falling. A wild value must not be called a fall, hence suspects are looked at first."""
    newest = latest(looked_at, numbers["window"]["least"])
    values = [reading["systolic_mmhg"] for reading in newest]
    suspects = _suspects(looked_at, newest, latest, centre, numbers)
    if suspects and not is_even(values, numbers["even_permille"]):
        return Agreement("scattered", (), 0, suspects)
    if not has_stopped_falling(values, numbers["fall"]):
        return Agreement("falling", (), 0, [])
    return Agreement("scattered", (), 0, suspects)


def _suspects(
    looked_at: list[Reading],
    newest: Sequence[Reading],
    latest: Callable[..., Sequence[Any]],
    centre: Callable[[Sequence[int]], int],
    numbers: Mapping[str, Any],
) -> list[str]:
    """Ids of the newest that lie further from the centre than both the floor in mmHg and the multiple of the MAD.

    Distances are doubled and the MAD is fourfold, since a centre may be a half: all stays whole.
    """
    suspect = numbers["suspect"]
    compared = [reading["systolic_mmhg"] for reading in latest(looked_at, suspect["of_latest"])]
    twice_centre = centre(compared)
    four_mads = centre([abs(2 * value - twice_centre) for value in compared])
    named = []
    for reading in newest:
        twice_away = abs(2 * reading["systolic_mmhg"] - twice_centre)
        if twice_away > 2 * suspect["mmhg"] and 2 * 1000 * twice_away > suspect["mad_permille"] * four_mads:
            named.append(reading["id"])
    return named


def advice_without_window(decides: bool, above_gauge_and_eligible: int, document: Mapping[str, Any]) -> str:
    """`enough` when the bounds decide, `stop_today` when the animal has had enough readings, else `go_on`."""
    if decides:
        return "enough"
    return "stop_today" if above_gauge_and_eligible >= document["numbers"]["stop_today_readings"] else "go_on"


def wants_second_look(
    eligible: Sequence[Reading], systolic_sum: int, systolic_n: int, rest_s: int | None, document: Mapping[str, Any]
) -> bool:
    """Whether ten quiet minutes and three more readings are worth it: a raised mean after too short a rest.

    A long enough pause between two successive eligible readings (times of both known) counts as that rest.
    """
    second_look = document["numbers"]["second_look"]
    if systolic_sum < second_look["from_mmhg"] * systolic_n:
        return False
    if rest_s is not None and rest_s >= second_look["rest_s"]:
        return False
    times = [reading.get("taken_s") for reading in eligible]
    return not any(
        one is not None and next_one is not None and abs(next_one - one) >= second_look["rest_s"]
        for one, next_one in pairwise(times)
    )
