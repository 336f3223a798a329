"""Rule 7, category: which set speaks, and which band of risk its mean falls in.

Answers a category or why none is given. Must never diagnose: a category belongs to this visit.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from quietcuff.rules.height import corrected_mean_mmhg
from quietcuff.rules.judged_set import JudgedSet

# The band below every edge; the others are named by the document.
LOWEST_BAND = "minimal"
# A cuff error that points away from the finding strengthens it: it reads high and the mean is minimal all the same.
POINTS_AWAY = {("reads_high", "minimal"), ("reads_low", "high")}


def raw(judged: JudgedSet) -> tuple[int, int]:
    """The mean as it was measured, as sum and n; never the corrected one."""
    return judged.systolic_sum, judged.systolic_n


MEANS: dict[str, Callable[[JudgedSet], tuple[int, int]]] = {"raw": raw}


def result_set(judged_sets: Sequence[JudgedSet]) -> int:
    """Index of the latest set with a window or with bounds that decide; without any, of the latest set."""
    for index in range(len(judged_sets) - 1, -1, -1):
        if judged_sets[index].window or judged_sets[index].bounds_decide:
            return index
    return len(judged_sets) - 1


def band(over: int, under: int, from_mmhg: Mapping[str, int]) -> str:
    """The band of the exact mean over/under (mmHg): the highest edge it reaches, the edge itself included."""
    reached = [(edge, name) for name, edge in from_mmhg.items() if over >= edge * under]
    return max(reached)[1] if reached else LOWEST_BAND


def category(measurement: Mapping[str, Any], judged: JudgedSet, document: Mapping[str, Any]) -> dict[str, Any]:
    """`category`, with `near_edges_mmhg` where there are any, or else `category_withheld`.

    Source: shared_schemas/rules/README.md, rule 7.
    """
    numbers = document["numbers"]
    over, under = MEANS[document["choices"]["mean"]](judged)
    withheld = _withheld_before_placing(measurement, judged, numbers)
    if withheld is None:
        placed = band(over, under, numbers["from_mmhg"])
        withheld = _withheld_after_placing(placed, over, under, judged, numbers)
    if withheld is not None:
        return {"category_withheld": withheld}
    edges = near_edges_mmhg(judged.shown["systolic"], numbers)
    return {"category": placed} | ({"near_edges_mmhg": edges} if edges else {})


def _withheld_before_placing(
    measurement: Mapping[str, Any], judged: JudgedSet, numbers: Mapping[str, Any]
) -> str | None:
    """Reasons about the animal and the series; an animal of unknown age counts as an adult."""
    if measurement.get("state") == "sedated":
        return "sedated"
    if "age_months" in measurement and measurement["age_months"] < numbers["adult_months"]:
        return "not_adult"
    return None if judged.verdict == "steady" else judged.verdict


def _withheld_after_placing(
    placed: str, over: int, under: int, judged: JudgedSet, numbers: Mapping[str, Any]
) -> str | None:
    """Reasons about the value. A cuff that was not recorded withholds nothing: it is a caution."""
    if over < numbers["low_pressure_mmhg"] * under:
        return "low_pressure"
    if _is_moved_by_height(placed, judged, numbers):
        return "height"
    cuff = judged.shown.get("cuff")
    if cuff and cuff["fit"] == "poor" and (cuff["expect"], placed) not in POINTS_AWAY:
        return "cuff"
    return None


def _is_moved_by_height(placed: str, judged: JudgedSet, numbers: Mapping[str, Any]) -> bool:
    """Whether the exact corrected mean, where there is one, lies in another band or counts as low pressure."""
    if "height" not in judged.shown:
        return False
    correction = judged.shown["height"]["correction_hundredths_mmhg"]
    over, under = corrected_mean_mmhg(judged.systolic_sum, judged.systolic_n, correction)
    return over < numbers["low_pressure_mmhg"] * under or band(over, under, numbers["from_mmhg"]) != placed


def near_edges_mmhg(systolic: Mapping[str, int], numbers: Mapping[str, Any]) -> list[int]:
    """Edges within the interval, or within a few mmHg where that is wider; in rounded tenths, as shown.

    The lower end is left out: a mean that is the margin above an edge is clear of it, one the margin below is not.
    """
    mean = systolic["mean_tenths_mmhg"]
    margin = max(systolic.get("ci95_half_width_tenths_mmhg", 0), numbers["near_edge_tenths_mmhg"])
    edges = sorted(numbers["from_mmhg"].values())
    return [edge for edge in edges if mean - margin < 10 * edge <= mean + margin]


def firmness(placed: Mapping[str, Any], has_headline_caution: bool) -> str:
    """`not_placed` without a category; with one `with_care` when a headline caution stands, else `firm`."""
    if "category" not in placed:
        return "not_placed"
    return "with_care" if has_headline_caution else "firm"
