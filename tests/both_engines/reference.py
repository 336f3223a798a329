"""A slow third form of rules 2 to 5 for one set, made of general reference libraries: fractions, numpy, scipy.stats.

Its figures are typed here from the rule text, not read from the documents, and nothing of either engine is used.
It must not be made fast or shared with an engine: its worth is that it was written apart.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

import numpy
from scipy import stats

POSSIBLE = {"systolic_mmhg": (20, 300), "mean_mmhg": (20, 250), "diastolic_mmhg": (10, 200)}


class Averaged(NamedTuple):
    """Exact mean; SD, spread and 95 % half width as floats, None where there is none."""

    n: int
    mean: Fraction
    sd: float | None
    spread: Fraction | None
    half_width: float | None


def is_eligible(reading: dict[str, Any], position: int) -> bool:
    """Not set aside, with a number, possible, in order, and not the first of the set."""
    if "set_aside" in reading or "beyond" in reading or position == 0:
        return False
    present = [(key, reading[key]) for key in POSSIBLE if key in reading]
    within = all(POSSIBLE[key][0] <= value <= POSSIBLE[key][1] for key, value in present)
    values = [value for _, value in present]
    return within and bool(numpy.all(numpy.diff(values) < 0))


def looked_at(readings: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Eligible, after the latest attempt above the gauge that nobody set aside."""
    above = [i for i, r in enumerate(readings) if r.get("beyond") == "above_gauge" and "set_aside" not in r]
    start = above[-1] + 1 if above else 0
    return [r for i, r in enumerate(readings) if is_eligible(r, i) and i >= start]


def is_even(values: list[int]) -> bool:
    """A range of at most a fifth of the mean."""
    return Fraction(max(values) - min(values)) / _mean(values) <= Fraction(1, 5)


def is_falling(values: list[int]) -> bool:
    """First half above the last by more than 2 mmHg and more than a fiftieth of the mean."""
    half = len(values) // 2
    fall = _mean(values[:half]) - _mean(values[-half:])
    return fall > 2 and fall / _mean(values) > Fraction(1, 50)


def window(values: list[int]) -> list[int]:
    """The latest 5, grown to 6 and 7 while they pass; empty without."""
    found: list[int] = []
    for size in (5, 6, 7):
        latest = values[-size:]
        if len(latest) < size or not is_even(latest) or is_falling(latest):
            break
        found = latest
    return found


def suspects(values: list[int]) -> list[int]:
    """Places among the latest five that lie away from the median of the latest seven: 10 mmHg or 3 x 1.4826 x MAD."""
    latest = values[-7:]
    centre = float(numpy.median(latest))
    spread = float(stats.median_abs_deviation(latest, center=numpy.median, scale=1.0))
    limit = max(Fraction(10), Fraction(4448, 1000) * Fraction(spread))
    first = max(0, len(values) - 5)
    return [i for i in range(first, len(values)) if abs(values[i] - Fraction(centre)) > limit]


def verdict(values: list[int]) -> str:
    """What a set in regular rhythm comes to."""
    if len(values) < 5:
        return "too_few"
    if window(values):
        return "steady"
    latest = values[-5:]
    if not is_even(latest) and suspects(values):
        return "scattered"
    return "falling" if is_falling(latest) else "scattered"


def averaged(values: list[int], with_window: bool) -> Averaged:
    """Mean by fractions, SD by numpy, the interval by Student's t from scipy."""
    n, mean = len(values), _mean(values)
    if n < 2:
        return Averaged(n, mean, None, None, None)
    half_width = None
    if with_window and 5 <= n <= 10:
        low, high = stats.t.interval(0.95, n - 1, loc=0, scale=1)
        half_width = float((high - low) / 2 * numpy.std(values, ddof=1) / numpy.sqrt(n))
    spread = Fraction(max(values) - min(values)) / mean
    return Averaged(n, mean, float(numpy.std(values, ddof=1)), spread, half_width)


def _mean(values: list[int]) -> Fraction:
    return Fraction(sum(values), len(values))
