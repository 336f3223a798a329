"""What vectors cannot say of the Python engine: documents are arguments, words select, inputs are left alone.

The numbers themselves are held by the vectors (tests/vectors) in both engines; only the worked example of
shared_schemas/rules/README.md's shape is repeated here, by hand.
"""

import copy
from typing import Any

import pytest

from quietcuff.contract.rule_documents import leaves, rule_set
from quietcuff.contract.wire import check_measurement
from quietcuff.rules.assess import assess
from quietcuff.rules.cautions import CAUTIONS
from quietcuff.rules.cuff import choose_cuff

V1 = rule_set("v1")


def numbers(*systolic: int) -> list[dict[str, Any]]:
    return [{"id": f"r{place}", "systolic_mmhg": value} for place, value in enumerate(systolic)]


def measured(readings: list[dict[str, Any]], of_set: dict[str, Any] | None = None, **more: Any) -> dict[str, Any]:
    """An adult dog at rest with a good cuff, so that nothing but what a test adds is to be cautioned."""
    one_set = {"method": "doppler", "limb_circumference_mm": 130, "cuff_width_mm": 50, "readings": readings}
    base = {"species": "dog", "age_months": 60, "rest_s": 700, "sets": [one_set | (of_set or {})]}
    return base | more


STEADY = numbers(168, 142, 138, 140, 136, 144)


def test_the_worked_example() -> None:
    """An adult dog, rest 400 s, calm, Doppler, limb 130, cuff 50, readings 168 142 138 140 136 144 and 190 set aside.

    By hand: 130 · 0.4 = 52.0 mm; 50/130 = 384.6 → 385 ‰; counted 142 138 140 136 144, Σ = 700, mean 140.0;
    Σ(x−140)² = 4+4+0+16+16 = 40, V = 40/4 = 10, SD = 3.162 → 3.2; spread 8/140 = 57.1 → 57 ‰;
    2.776 · 3.1623/√5 = 3.926 → 3.9; 140.0 − 5.0 < 140 ≤ 145.0 is near; rest 400 < 600 and mean ≥ 140: second look.
    """
    values = [168, 142, 138, 140, 136, 144, 190]
    readings = [{"id": id_, "systolic_mmhg": value} for id_, value in zip("abcdefg", values, strict=True)]
    readings[6]["set_aside"] = "moved"
    assert assess(measured(readings, rest_s=400, demeanour="calm"), V1) == {
        "rules": "v1",
        "sets": [
            {
                "cuff": {"target_tenths_mm": 520, "share_permille": 385, "fit": "good"},
                "readings": [
                    {"id": "a", "standing": "first"},
                    *({"id": id_, "standing": "counted"} for id_ in "bcdef"),
                    {"id": "g", "standing": "by_hand"},
                ],
                "verdict": "steady",
                "systolic": {
                    "n": 5,
                    "mean_tenths_mmhg": 1400,
                    "sd_tenths_mmhg": 32,
                    "spread_permille": 57,
                    "ci95_half_width_tenths_mmhg": 39,
                },
            }
        ],
        "result_set": 0,
        "category": "low",
        "near_edges_mmhg": [140],
        "advice": "second_look",
        "firmness": "firm",
    }


OSCILLOMETRIC = {"method": "oscillometric"}
SET_ASIDE_HIGH = [
    {"id": "x", "systolic_mmhg": 200, "set_aside": "moved"},
    {"id": "y", "systolic_mmhg": 210, "set_aside": "moved"},
]
SET_ASIDE_BOTH = [*SET_ASIDE_HIGH, {"id": "z", "systolic_mmhg": 60, "set_aside": "other"}]


def at(*times_s: int) -> list[dict[str, Any]]:
    return [{**reading, "taken_s": time} for reading, time in zip(STEADY, times_s, strict=False)]


# One measurement for each caution; the engine asks the document for a direction and a weight only when it applies.
CAUSES: dict[str, dict[str, Any]] = {
    "rest_short": measured(STEADY, rest_s=299),
    "tense": measured(STEADY, demeanour="tense"),
    "fighting": measured(STEADY, demeanour="fighting"),
    "calmed": measured(STEADY, state="calmed"),
    "cuff_narrow": measured(STEADY, {"cuff_width_mm": 40}),
    "cuff_wide": measured(STEADY, {"cuff_width_mm": 60}),
    "cuff_unknown": {**measured(STEADY), "sets": [{"method": "doppler", "readings": STEADY}]},
    "height_off": measured(STEADY, {"cuff_above_heart_mm": -50}),
    "irregular_rhythm": measured(STEADY, rhythm="irregular"),
    "oscillometric_high": measured(numbers(160, 150, 150, 150, 150, 150), OSCILLOMETRIC),
    "oscillometric_small": measured(STEADY, {**OSCILLOMETRIC, "limb_circumference_mm": 69, "cuff_width_mm": 28}),
    "many_set_aside": measured([*numbers(140, 140), *SET_ASIDE_BOTH]),
    "one_sided": measured([*STEADY, *SET_ASIDE_HIGH]),
    "rising": measured(numbers(168, 140, 140, 144, 150, 150)),
    "pulse_differs": measured([*STEADY[:5], {**STEADY[5], "pulse_bpm": 100, "palpated_bpm": 120}]),
    "sitting_up": measured(STEADY, {"posture": "sitting"}),
    "gap_short": measured(at(0, 29)),
    "gap_unknown": measured(at(0, 10, 20)),
    "odd_gauge_value": measured(numbers(168, 141, 139, 141, 139, 140), {"gauge": "aneroid"}),
    "not_comparable": measured(STEADY, previous={"method": "oscillometric"}),
    "unlikely_confirmed": measured(numbers(70, 78, 78, 78, 78, 78)),
}


def test_the_causes_cover_every_caution() -> None:
    assert list(CAUSES) == [key for key, _ in CAUTIONS]


@pytest.mark.parametrize("key", CAUSES)
def test_each_cause_raises_its_caution_and_passes_the_contract(key: str) -> None:
    assert check_measurement(CAUSES[key]) is None
    assert key in [caution["key"] for caution in assess(CAUSES[key], V1)["cautions"]]


def changed(rule: str, pointer: str, to: int | str) -> dict[str, Any]:
    """Rule set v1 with one leaf of one document replaced."""
    rules = copy.deepcopy(V1)
    place: Any = rules["documents"][rule]
    *steps, last = pointer.split("/")[1:]
    for step in steps:
        place = place[int(step)] if isinstance(place, list) else place[step]
    place[int(last) if isinstance(place, list) else last] = to
    return rules


ABOVE_GAUGE = [{"id": str(place), "beyond": "above_gauge"} for place in range(3)]
EVERYTHING = [*CAUSES.values(), measured(STEADY, {"cuff_above_heart_mm": 200}), measured(ABOVE_GAUGE)]
CHOICES = [
    (rule, pointer)
    for rule, document in V1["documents"].items()
    for pointer in leaves(document)
    if pointer.startswith("/choices/") and (rule, pointer) != ("cuff", "/choices/of_equal_fit")
]


@pytest.mark.parametrize(("rule", "pointer"), CHOICES)
def test_an_unknown_word_raises(rule: str, pointer: str) -> None:
    rules = changed(rule, pointer, "a_word_of_tomorrow")
    with pytest.raises(KeyError, match="a_word_of_tomorrow"):
        for measurement in EVERYTHING:
            assess(measurement, rules)


def test_an_unknown_word_raises_in_the_choice_of_a_cuff() -> None:
    document = changed("cuff", "/choices/of_equal_fit", "a_word_of_tomorrow")["documents"]["cuff"]
    with pytest.raises(KeyError, match="a_word_of_tomorrow"):
        choose_cuff("dog", 130, [50, 55], document)


def test_an_empty_bag_is_an_error() -> None:
    with pytest.raises(ValueError, match="empty bag"):
        choose_cuff("dog", 130, [], V1["documents"]["cuff"])


def test_documents_are_arguments() -> None:
    """The same measurement by two rule sets in turn: nothing is remembered between calls."""
    practice = changed("category", "/numbers/from_mmhg/low", 141) | {"name": "v1+0123456789ab"}
    measurement = measured(STEADY)
    first, other, again = assess(measurement, V1), assess(measurement, practice), assess(measurement, V1)
    assert (first["category"], first["rules"]) == ("low", "v1")
    assert (other["category"], other["rules"]) == ("minimal", "v1+0123456789ab")
    assert again == first


def test_neither_measurement_nor_documents_are_changed() -> None:
    measurements, rules = copy.deepcopy(EVERYTHING), copy.deepcopy(V1)
    for measurement in EVERYTHING:
        answer = assess(measurement, V1)
        answer["sets"][0]["verdict"] = "planted"
    assert measurements == EVERYTHING
    assert rules == V1
