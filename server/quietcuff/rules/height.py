"""Rule 6, height: what a cuff above or below the heart does to the reading.

Answers a correction beside the raw mean. Must never replace the raw mean: bands are placed on what was measured.
"""

from collections.abc import Callable, Mapping
from typing import Any

from quietcuff.rules.whole_numbers import half_up


def whole(cuff_above_heart_mm: int) -> int:
    """The whole distance counts, not only what exceeds the level: that is how a column of blood acts."""
    return cuff_above_heart_mm


DISTANCES: dict[str, Callable[[int], int]] = {"whole": whole}


def height(
    species: str, cuff_above_heart_mm: int, systolic_sum: int, systolic_n: int, document: Mapping[str, Any]
) -> dict[str, int] | None:
    """The correction in hundredths of a mmHg and the corrected systolic mean in tenths, half up.

    None when nothing is averaged, when the cuff counts as level, or for a species the document has no figures for
    (cats are never corrected). + is above the heart base. Source: shared_schemas/rules/README.md, rule 6.
    """
    numbers = document["numbers"]
    distance = DISTANCES[document["choices"]["distance"]]
    if systolic_n == 0 or species not in numbers["level_mm"]:
        return None
    if abs(cuff_above_heart_mm) <= numbers["level_mm"][species]:
        return None
    correction = numbers["hundredths_mmhg_per_mm"][species] * distance(cuff_above_heart_mm)
    over, under = corrected_mean_mmhg(systolic_sum, systolic_n, correction)
    return {
        "correction_hundredths_mmhg": correction,
        "corrected_mean_tenths_mmhg": half_up(10 * over, under),
    }


def corrected_mean_mmhg(systolic_sum: int, systolic_n: int, correction_hundredths_mmhg: int) -> tuple[int, int]:
    """The exact corrected mean as numerator and denominator, in mmHg."""
    return 100 * systolic_sum + correction_hundredths_mmhg * systolic_n, 100 * systolic_n
