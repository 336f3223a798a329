"""Rule 4, averaging: mean, spread and interval over the readings that count.

Answers numbers with their n. Must never average what rule 2 left out, nor weigh one reading more than another.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from quietcuff.rules.standing import Reading
from quietcuff.rules.whole_numbers import half_up, root_tenths


def range_over_mean(values: Sequence[int], total: int) -> int:
    """(max - min) / mean in permille, half up."""
    return half_up((max(values) - min(values)) * len(values) * 1000, total)


SPREADS: dict[str, Callable[[Sequence[int], int], int]] = {"range_over_mean": range_over_mean}


def averages(averaged: Sequence[Reading], has_window: bool, document: Mapping[str, Any]) -> dict[str, Any]:
    """`systolic`, `mean`, `diastolic`, `pulse` over those of the readings that carry them; absent where none does.

    Source: shared_schemas/rules/README.md, rule 4.
    """
    found: dict[str, Any] = {}
    for measure in ("systolic", "mean", "diastolic"):
        key = measure + "_mmhg"
        values = [reading[key] for reading in averaged if key in reading]
        if values:
            found[measure] = average_mmhg(values, has_window, document)
    pulses = [reading["pulse_bpm"] for reading in averaged if "pulse_bpm" in reading]
    if pulses:
        found["pulse"] = {"n": len(pulses), "mean_tenths_bpm": half_up(10 * sum(pulses), len(pulses))}
    return found


def average_mmhg(values: Sequence[int], has_window: bool, document: Mapping[str, Any]) -> dict[str, int]:
    """`n` and mean of at least one pressure; from two on SD and spread; the interval with a window and a known t."""
    spread = SPREADS[document["choices"]["spread"]]
    n, total = len(values), sum(values)
    average = {"n": n, "mean_tenths_mmhg": half_up(10 * total, n)}
    if n < 2:
        return average
    # Variance as a fraction: (n·Σx² − (Σx)²) / (n·(n − 1)), never rounded on the way.
    over, under = n * sum(value * value for value in values) - total * total, n * (n - 1)
    average["sd_tenths_mmhg"] = root_tenths(over, under)
    average["spread_permille"] = spread(values, total)
    interval = document["numbers"]["interval"]
    row = n - interval["from_n"]
    if has_window and 0 <= row < len(interval["t_thousandths"]):
        t = interval["t_thousandths"][row]
        average["ci95_half_width_tenths_mmhg"] = root_tenths(over * t * t, under * n * 1000 * 1000)
    return average
