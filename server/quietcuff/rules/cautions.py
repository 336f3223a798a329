"""Rule 8, cautions: what may be wrong with the result, and which way.

Answers keys with a direction and a weight. Must never block: a caution is read beside the number, not instead of it.
Each caution is one function of the case; CAUTIONS holds their order. Source: shared_schemas/rules/README.md, rule 8.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from quietcuff.rules.judged_set import JudgedSet
from quietcuff.rules.whole_numbers import twice_median


class Case(NamedTuple):
    """What a caution looks at: the measurement, its result set as given and as judged, the document's numbers."""

    measurement: Mapping[str, Any]
    given: Mapping[str, Any]
    judged: JudgedSet
    numbers: Mapping[str, Any]


def rest_short(case: Case) -> bool:
    """Quiet time under the species' least, or not recorded."""
    rest_s = case.measurement.get("rest_s")
    return rest_s is None or rest_s < case.numbers["rest_short_s"][case.measurement["species"]]


def _cuff_is_off(case: Case, expect: str) -> bool:
    cuff = case.judged.shown.get("cuff")
    return cuff is not None and cuff["fit"] != "good" and cuff.get("expect") == expect


def cuff_unknown(case: Case) -> bool:
    """Circumference or width was not recorded: nobody can tell whether the cuff fitted."""
    return "limb_circumference_mm" not in case.given or "cuff_width_mm" not in case.given


def height_off(case: Case) -> bool:
    """The cuff lay that far above or below the heart base, or further."""
    return abs(case.given.get("cuff_above_heart_mm", 0)) >= case.numbers["height_off_mm"]


def _is_oscillometric(case: Case) -> bool:
    return case.given["method"] == "oscillometric"


def oscillometric_high(case: Case) -> bool:
    """Oscillometry reads lower the higher the pressure: exact systolic mean of the averaged readings."""
    n = case.judged.systolic_n
    reaches = case.judged.systolic_sum >= case.numbers["oscillometric_high_mmhg"] * n
    return _is_oscillometric(case) and n > 0 and reaches


def oscillometric_small(case: Case) -> bool:
    """A limb so thin that machines often fail on it; an unknown circumference says nothing."""
    limb_circumference_mm = case.given.get("limb_circumference_mm")
    is_small = limb_circumference_mm is not None and limb_circumference_mm < case.numbers["oscillometric_small_mm"]
    return is_small and _is_oscillometric(case)


def many_set_aside(case: Case) -> bool:
    """More than one in so many of all readings of the set was set aside: a choice of readings, not a series."""
    readings = case.given["readings"]
    set_aside = sum(1 for reading in readings if "set_aside" in reading)
    return set_aside * case.numbers["many_set_aside_one_in"] > len(readings)


def one_sided(case: Case) -> bool:
    """Everything set aside with a systolic lies above, or everything below, the median of the eligible readings."""
    set_aside = [
        2 * reading["systolic_mmhg"]
        for reading in case.given["readings"]
        if "set_aside" in reading and "systolic_mmhg" in reading
    ]
    if len(set_aside) < case.numbers["one_sided_least"] or not case.judged.eligible:
        return False
    middle = twice_median([reading["systolic_mmhg"] for reading in case.judged.eligible])
    return min(set_aside) > middle or max(set_aside) < middle


def rising(case: Case) -> bool:
    """Within a window the last half's mean is clearly above the first half's; not looked for in an irregular rhythm."""
    window = case.judged.window
    if not window or _is_irregular(case):
        return False
    values = [reading["systolic_mmhg"] for reading in window]
    half = len(values) // 2
    first, last = sum(values[:half]), sum(values[len(values) - half :])
    return (last - first) * 1000 > case.numbers["rising_permille"] * first


def _is_irregular(case: Case) -> bool:
    return case.measurement.get("rhythm") == "irregular"


def pulse_differs(case: Case) -> bool:
    """In an averaged reading machine and fingers count pulses that differ by more than both limits."""
    limits = case.numbers["pulse_differs"]
    for reading in case.judged.averaged:
        if "pulse_bpm" not in reading or "palpated_bpm" not in reading:
            continue
        palpated = reading["palpated_bpm"]
        difference = abs(reading["pulse_bpm"] - palpated)
        if difference > limits["bpm"] and difference * 1000 > limits["permille"] * palpated:
            return True
    return False


def _gap_is_short(case: Case) -> bool:
    """Two successive readings of the set, both times known, less than the least gap apart."""
    return any(
        "taken_s" in one and "taken_s" in next_one
        and abs(next_one["taken_s"] - one["taken_s"]) < case.numbers["gap_short_s"]
        for one, next_one in pairwise(case.given["readings"])
    )


def _were_typed_in_afterwards(case: Case) -> bool:
    """So many successive readings, all times known, lie so close together that the times are those of typing."""
    limits = case.numbers["gap_unknown"]
    times = [reading.get("taken_s") for reading in case.given["readings"]]
    for start in range(len(times) - limits["readings"] + 1):
        together = times[start : start + limits["readings"]]
        if None not in together and max(together) - min(together) <= limits["within_s"]:
            return True
    return False


def gap_short(case: Case) -> bool:
    """Readings followed each other too soon, and the times are those of the readings."""
    return _gap_is_short(case) and not _were_typed_in_afterwards(case)


def gap_unknown(case: Case) -> bool:
    """Readings seem to follow each other too soon, but were entered afterwards."""
    return _gap_is_short(case) and _were_typed_in_afterwards(case)


def odd_gauge_value(case: Case) -> bool:
    """A value between the marks of an aneroid gauge."""
    step = case.numbers["gauge_step_mmhg"]
    is_aneroid = case.given.get("gauge") == "aneroid"
    return is_aneroid and any(reading["systolic_mmhg"] % step for reading in case.judged.averaged)


def not_comparable(case: Case) -> bool:
    """Something both visits recorded differs from the last measurement."""
    previous = case.measurement.get("previous", {})
    for name in ("method", "site", "posture", "instrument"):
        if name in previous and name in case.given and previous[name] != case.given[name]:
            return True
    if "place" in previous and "place" in case.measurement and previous["place"] != case.measurement["place"]:
        return True
    cuff = case.judged.shown.get("cuff")
    if cuff is None or "cuff_share_permille" not in previous:
        return False
    difference = abs(cuff["share_permille"] - previous["cuff_share_permille"])
    return difference > case.numbers["cuff_share_differs_permille"]


def unlikely_confirmed(case: Case) -> bool:
    """An averaged reading is possible but outside what is likely; the limits themselves are likely."""
    limits = [(measure + "_mmhg", low, high) for measure, (low, high) in case.numbers["likely_mmhg"].items()]
    return any(
        key in reading and not low <= reading[key] <= high
        for reading in case.judged.averaged
        for key, low, high in limits
    )


CAUTIONS: Sequence[tuple[str, Callable[[Case], bool]]] = (
    ("rest_short", rest_short),
    ("tense", lambda case: case.measurement.get("demeanour") == "tense"),
    ("fighting", lambda case: case.measurement.get("demeanour") == "fighting"),
    ("calmed", lambda case: case.measurement.get("state") == "calmed"),
    ("cuff_narrow", lambda case: _cuff_is_off(case, "reads_high")),
    ("cuff_wide", lambda case: _cuff_is_off(case, "reads_low")),
    ("cuff_unknown", cuff_unknown),
    ("height_off", height_off),
    ("irregular_rhythm", _is_irregular),
    ("oscillometric_high", oscillometric_high),
    ("oscillometric_small", oscillometric_small),
    ("many_set_aside", many_set_aside),
    ("one_sided", one_sided),
    ("rising", rising),
    ("pulse_differs", pulse_differs),
    ("sitting_up", lambda case: case.given.get("posture") == "sitting"),
    ("gap_short", gap_short),
    ("gap_unknown", gap_unknown),
    ("odd_gauge_value", odd_gauge_value),
    ("not_comparable", not_comparable),
    ("unlikely_confirmed", unlikely_confirmed),
)


def by_height(case: Case) -> str:
    """A cuff below the heart carries the column of blood above it and reads high; above the heart it reads low."""
    return "high" if case.given["cuff_above_heart_mm"] < 0 else "low"


DIRECTIONS: dict[str, Callable[[Case], str]] = {
    "high": lambda _case: "high",
    "low": lambda _case: "low",
    "either": lambda _case: "either",
    "by_height": by_height,
}
# Whether a caution of this weight can lower the firmness and lean the result.
IS_HEADLINE = {"headline": True, "minor": False}


def cautions(
    measurement: Mapping[str, Any], judged: JudgedSet, document: Mapping[str, Any]
) -> list[dict[str, str]]:
    """The cautions of the result set, in the order of CAUTIONS; a list that may be empty."""
    case = Case(measurement, judged.given, judged, document["numbers"])
    directions, weights = document["choices"]["direction"], document["choices"]["weight"]
    return [
        {"key": key, "direction": DIRECTIONS[directions[key]](case), "weight": weights[key]}
        for key, applies in CAUTIONS
        if applies(case)
    ]


def leaning(found: Sequence[Mapping[str, str]]) -> str | None:
    """The direction all headline cautions share, else `either`; None without a headline caution."""
    directions = {caution["direction"] for caution in found if IS_HEADLINE[caution["weight"]]}
    if not directions:
        return None
    return directions.pop() if len(directions) == 1 else "either"
