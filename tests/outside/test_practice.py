"""What the trade does and what the consensus statements print, asked of both engines.

Sources beside each test. "Consensus" = Brown et al., J Vet Intern Med 2007;21:542-558 and Acierno et al., J Vet Intern
Med 2018;32:1803-1822, both from memory, the 2018 bands also from papers that were read.
"""

from __future__ import annotations

import pytest

from tests.outside.conftest import Ask
from tests.outside.series import call

BANDS = (("minimal", 100, 140), ("low", 140, 160), ("moderate", 160, 180), ("high", 180, 301))


@pytest.mark.parametrize(("category", "from_mmhg", "below_mmhg"), BANDS)
def test_published_bands(ask: Ask, category: str, from_mmhg: int, below_mmhg: int) -> None:
    """Consensus 2018: minimal < 140, low 140-159, moderate 160-179, high >= 180; every whole mean from 100 to 300."""
    answers = ask([call(*[mean] * 6) for mean in range(from_mmhg, below_mmhg)])
    assert {found["category"] for found in answers} == {category}


def test_published_count(ask: Ask) -> None:
    """Consensus: five to seven consecutive readings, after a first that is not counted (common practice)."""
    counted = []
    for found in ask([call(200, *[150] * number) for number in range(12)]):
        standings = [reading["standing"] for reading in found["sets"][0]["readings"]]
        assert standings[0] == "first"
        counted.append(standings.count("counted"))
    assert counted == [0, 0, 0, 0, 0, 5, 6, 7, 7, 7, 7, 7]


def test_published_variability(ask: Ask) -> None:
    """Consensus: less than 20 % variability; the form (largest - smallest) / mean is ours. 136 to 164 about 150."""
    within, beyond = ask([call(170, 150, 136, 164, 150, 150), call(170, 150, 132, 168, 150, 150)])
    assert within["sets"][0]["verdict"] == "steady"  # 28 / 150 = 18.7 %
    assert beyond["sets"][0]["verdict"] != "steady"  # 36 / 150 = 24 %


def test_first_reading_is_not_counted(ask: Ask) -> None:
    """Common practice: whatever the first reading was, the mean is that of the others."""
    answers = ask([call(first, *[150] * 5) for first in (90, 150, 290)])
    assert [found["sets"][0]["systolic"]["mean_tenths_mmhg"] for found in answers] == [1500, 1500, 1500]


def test_readings_half_a_minute_apart(ask: Ask) -> None:
    """Common practice: about 30 s between readings; from there on no caution."""
    answers = ask([call(*[130] * 6, step_s=apart_s) for apart_s in (25, 30, 60)])
    keys = [[caution["key"] for caution in found.get("cautions", ())] for found in answers]
    assert keys == [["gap_short"], [], []]


@pytest.mark.parametrize(("species", "ratio"), [("dog", 0.40), ("cat", 0.35)])
def test_cuff_width_to_circumference(ask: Ask, species: str, ratio: float) -> None:
    """Consensus: width about 40 % of the circumference, 30-40 % in cats; of every width the nearest is taken."""
    limbs_mm, bag = range(40, 400, 7), {"bag_mm": list(range(5, 250))}
    calls = [{"do": "cuff", "species": species, "limb_circumference_mm": limb_mm, **bag} for limb_mm in limbs_mm]
    for limb_mm, found in zip(limbs_mm, ask(calls), strict=True):
        assert abs(found["choice_mm"] - ratio * limb_mm) < 1
        assert abs(found["target_tenths_mm"] - 10 * ratio * limb_mm) <= 0.5 + 1e-9
        assert found["fit"] == "good"


def test_between_sizes_the_larger(ask: Ask) -> None:
    """Common practice: clearly between two sizes, the larger cuff. 125 mm asks for 50: 47 and 53 lie as near."""
    half_way, at_smaller = ask([
        {"do": "cuff", "species": "dog", "limb_circumference_mm": 125, "bag_mm": [47, 53]},
        {"do": "cuff", "species": "dog", "limb_circumference_mm": 125, "bag_mm": [50, 53]},
    ])  # fmt: skip
    assert (half_way["choice_mm"], at_smaller["choice_mm"]) == (53, 50)


@pytest.mark.parametrize(("width_mm", "key", "direction"), [(40, "cuff_narrow", "high"), (64, "cuff_wide", "low")])
def test_which_way_a_wrong_cuff_errs(ask: Ask, width_mm: int, key: str, direction: str) -> None:
    """All texts: too narrow a cuff reads falsely high, too wide falsely low. On 130 mm: 0.31 and 0.49."""
    (found,) = ask([call(*[130] * 6, cuff_width_mm=width_mm)])
    assert {"key": key, "direction": direction, "weight": "headline"} in found["cautions"]


def test_sedated_animals_are_not_placed(ask: Ask) -> None:
    """Common practice: the bands are for awake animals; a sedated one gets its number and no band."""
    (found,) = ask([call(*[150] * 6, state="sedated")])
    assert "category" not in found
    assert found["sets"][0]["systolic"]["mean_tenths_mmhg"] == 1500
