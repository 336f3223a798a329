"""Random valid measurements against a third form made of fractions, numpy and scipy.stats.

Verdict, suspects and window must be the same; mean, SD, spread and half width agree to the rounding of the rules.
"""

from __future__ import annotations

import math
from collections import Counter
from fractions import Fraction
from random import Random
from typing import Any

import pytest

from tests.both_engines import reference
from tests.both_engines.measurements import measurement
from tests.both_engines.server_engine import answer

SIZE = 3000
# The document's t has three decimals; scipy's has all.
T_ROUNDING = 0.0005
FLOAT = 1e-6


def half_up(value: Fraction) -> int:
    """To the nearest whole number, halves upwards."""
    return math.floor(value + Fraction(1, 2))


def test_sets_against_the_reference() -> None:
    """Every set of SIZE measurements: agreement and averages."""
    random, seen = Random(1986), Counter()
    for _ in range(SIZE):
        given = measurement(random)
        for one, shown in zip(given["sets"], answer({"do": "assess", "measurement": given})["sets"], strict=True):
            seen[check_agreement(one, shown, given.get("rhythm", "regular"))] += 1
            check_averages(one, shown)
    print(dict(seen))
    assert all(seen[word] > 50 for word in ("steady", "too_few", "falling", "scattered"))


def check_agreement(one: dict[str, Any], shown: dict[str, Any], rhythm: str) -> str:
    """Verdict, what is still needed, suspects and the readings of the window."""
    looked = reference.looked_at(one["readings"])
    values = [reading["systolic_mmhg"] for reading in looked]
    if rhythm == "irregular":
        expected, counted = ("steady", values[-10:]) if len(values) >= 7 else ("too_few", [])
    else:
        expected, counted = reference.verdict(values), reference.window(values)
    assert shown["verdict"] == expected, one
    needed = (7 if rhythm == "irregular" else 5) - len(values)
    assert shown.get("readings_needed") == (needed if expected == "too_few" else None)
    assert len(counted_ids(shown)) == len(counted)
    assert counted_ids(shown) == [reading["id"] for reading in looked[len(looked) - len(counted) :]]
    named = [looked[place]["id"] for place in reference.suspects(values)] if expected == "scattered" else []
    assert shown.get("suspects", []) == named, one
    return expected


def counted_ids(shown: dict[str, Any]) -> list[str]:
    """Ids of the readings in the window."""
    return [reading["id"] for reading in shown.get("readings", ()) if reading["standing"] == "counted"]


def check_averages(one: dict[str, Any], shown: dict[str, Any]) -> None:
    """Each kind of pressure over the window, or over all eligible."""
    window = set(counted_ids(shown))
    eligible = [r for i, r in enumerate(one["readings"]) if reference.is_eligible(r, i)]
    averaged = [reading for reading in eligible if not window or reading["id"] in window]
    for name in ("systolic", "mean", "diastolic"):
        values = [reading[f"{name}_mmhg"] for reading in averaged if f"{name}_mmhg" in reading]
        assert (name in shown) == bool(values)
        if values:
            check_average(shown[name], reference.averaged(values, bool(window)))
    pulses = [reading["pulse_bpm"] for reading in averaged if "pulse_bpm" in reading]
    assert ("pulse" in shown) == bool(pulses)
    if pulses:
        tenths = half_up(Fraction(10 * sum(pulses), len(pulses)))
        assert shown["pulse"] == {"n": len(pulses), "mean_tenths_bpm": tenths}


def check_average(shown: dict[str, int], expected: reference.Averaged) -> None:
    """To the last digit where it is a fraction, to half a tenth where a root or t is in it."""
    assert (shown["n"], shown["mean_tenths_mmhg"]) == (expected.n, half_up(10 * expected.mean))
    assert ("sd_tenths_mmhg" in shown) == (expected.sd is not None) == ("spread_permille" in shown)
    assert ("ci95_half_width_tenths_mmhg" in shown) == (expected.half_width is not None)
    if expected.sd is not None and expected.spread is not None:
        assert abs(shown["sd_tenths_mmhg"] - 10 * expected.sd) <= 0.5 + FLOAT
        assert shown["spread_permille"] == half_up(1000 * expected.spread)
    if expected.half_width is not None and expected.sd is not None:
        rounding = 10 * T_ROUNDING * expected.sd / math.sqrt(expected.n)
        assert abs(shown["ci95_half_width_tenths_mmhg"] - 10 * expected.half_width) <= 0.5 + rounding + FLOAT


def test_the_reference_sees_a_wrong_tenth() -> None:
    """One tenth off in any figure is seen."""
    expected = reference.averaged([142, 138, 140, 136, 144], True)
    good = {"n": 5, "mean_tenths_mmhg": 1400, "sd_tenths_mmhg": 32, "spread_permille": 57}
    good |= {"ci95_half_width_tenths_mmhg": 39}
    check_average(good, expected)
    for key in good:
        with pytest.raises(AssertionError):
            check_average({**good, key: good[key] + 1}, expected)
