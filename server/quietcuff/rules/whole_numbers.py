"""Exact arithmetic on whole numbers: rounding half up, doubled medians, square roots.

Answers how a ratio becomes a whole number, and must never touch a float: the phone's engine has to agree to the
last digit, which binary fractions and `round` (half to even) would break.
"""

from collections.abc import Sequence
from math import isqrt


def half_up(numerator: int, denominator: int) -> int:
    """Round numerator/denominator to the nearest whole number, halves towards plus infinity.

    The denominator is above 0. `//` floors towards minus infinity, so that -1/2 gives 0 and -3/2 gives -1.
    Source: shared_schemas/rules/README.md, "Arithmetic".
    """
    return (2 * numerator + denominator) // (2 * denominator)


def root_tenths(numerator: int, denominator: int) -> int:
    """Square root of numerator/denominator, in tenths, half up; the ratio is 0 or more.

    400 = 20²: twenty times the root, floored, is two half-tenths a tenth, so that (r + 1) div 2 rounds half up.
    Source: shared_schemas/rules/README.md, rule 4.
    """
    return (isqrt(400 * numerator // denominator) + 1) // 2


def twice_median(values: Sequence[int]) -> int:
    """Twice the median: whole even when the median is the mean of the middle two. At least one value."""
    ordered = sorted(values)
    middle = len(ordered) // 2
    if len(ordered) % 2:
        return 2 * ordered[middle]
    return ordered[middle - 1] + ordered[middle]
