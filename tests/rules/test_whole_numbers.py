"""Exact arithmetic against general references: `fractions` and `statistics` of the standard library.

Half up is floor(x + 1/2), floor towards minus infinity: the definition in shared_schemas/rules/README.md.
"""

import random
import statistics
from fractions import Fraction
from math import floor

import pytest

from quietcuff.rules.whole_numbers import half_up, root_tenths, twice_median


@pytest.mark.parametrize(
    ("numerator", "denominator", "rounded"),
    [(1, 2, 1), (3, 2, 2), (-1, 2, 0), (-3, 2, -1), (-5, 2, -2), (0, 7, 0), (-7, 7, -1), (2, 3, 1), (-2, 3, -1)],
)
def test_half_up_by_hand(numerator: int, denominator: int, rounded: int) -> None:
    """By hand: 1/2 → 1, 3/2 → 2, −1/2 → 0, −3/2 → −1, −5/2 → −2: always towards plus infinity."""
    assert half_up(numerator, denominator) == rounded


def test_half_up_against_fractions() -> None:
    for numerator in range(-60, 61):
        for denominator in range(1, 25):
            assert half_up(numerator, denominator) == floor(Fraction(numerator, denominator) + Fraction(1, 2))


def test_half_up_beyond_what_a_double_holds() -> None:
    """2^53 + 1 cannot be told from 2^53 in a double."""
    assert half_up(2**53 + 1, 1) == 2**53 + 1
    assert half_up(-(2**60) - 1, 2) == floor(Fraction(-(2**60) - 1, 2) + Fraction(1, 2))


def test_root_tenths_is_the_nearest_tenth() -> None:
    """r is right when (r − 1/2)² ≤ 100·x < (r + 1/2)², in exact fractions."""
    chance = random.Random(3)
    cases = [(chance.randrange(0, 10**6), chance.randrange(1, 2000)) for _ in range(3000)]
    cases += [(0, 1), (1, 1), (1, 4), (1, 400), (1, 401), (9, 400), (2**80 + 1, 3)]
    for numerator, denominator in cases:
        root, hundredfold = root_tenths(numerator, denominator), 100 * Fraction(numerator, denominator)
        assert root >= 0
        assert root == 0 or (root - Fraction(1, 2)) ** 2 <= hundredfold
        assert hundredfold < (root + Fraction(1, 2)) ** 2


def test_twice_median_against_statistics() -> None:
    chance = random.Random(4)
    for size in range(1, 12):
        for _ in range(30):
            values = [chance.randrange(-300, 300) for _ in range(size)]
            before = list(values)
            assert twice_median(values) == 2 * Fraction(statistics.median(map(Fraction, values)))
            assert values == before
