"""Rule 1, cuff: does the cuff fit the limb, and which of a bag would?

Answers target width, share, fit and the direction of the error. Must never correct a pressure by number.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from quietcuff.rules.whole_numbers import half_up

# Best first: the place in this row is what "the better fit" means.
FITS = ("good", "usable", "poor")


def larger_unless_near_smaller(target_by_1000: int, smaller_mm: int, larger_mm: int, between_permille: int) -> int:
    """Of two cuffs that fit alike the larger, unless the target lies in the lower part of the gap between them."""
    is_well_above_smaller = target_by_1000 - 1000 * smaller_mm >= between_permille * (larger_mm - smaller_mm)
    return larger_mm if is_well_above_smaller else smaller_mm


OF_EQUAL_FIT: dict[str, Callable[[int, int, int, int], int]] = {
    "larger_unless_near_smaller": larger_unless_near_smaller,
}


def fit_of(width_mm: int, limb_circumference_mm: int, species: str, numbers: Mapping[str, Any]) -> str:
    """`good`, `usable` or `poor`, by the exact share of the circumference; limits included."""
    for fit in FITS[:-1]:
        low, high = numbers[fit + "_permille"][species]
        if low * limb_circumference_mm <= 1000 * width_mm <= high * limb_circumference_mm:
            return fit
    return FITS[-1]


def describe(
    width_mm: int, limb_circumference_mm: int, species: str, document: Mapping[str, Any]
) -> dict[str, Any]:
    """`share_permille` (half up, shown only), `fit`, and outside the good range `expect`, of one width."""
    numbers = document["numbers"]
    described = {
        "share_permille": half_up(1000 * width_mm, limb_circumference_mm),
        "fit": fit_of(width_mm, limb_circumference_mm, species, numbers),
    }
    good_low, good_high = numbers["good_permille"][species]
    if 1000 * width_mm < good_low * limb_circumference_mm:
        described["expect"] = "reads_high"  # a narrow cuff needs more pressure to close the artery
    elif 1000 * width_mm > good_high * limb_circumference_mm:
        described["expect"] = "reads_low"
    return described


def target_tenths_mm(species: str, limb_circumference_mm: int, document: Mapping[str, Any]) -> int:
    """The width to look for, in tenths of a mm, half up. Only shown; every comparison uses the exact target."""
    return half_up(10 * limb_circumference_mm * document["numbers"]["target_permille"][species], 1000)


def cuff_in_set(species: str, one_set: Mapping[str, Any], document: Mapping[str, Any]) -> dict[str, Any] | None:
    """Target, share, fit and `expect` of the cuff used; None unless circumference and width (mm) are both given."""
    limb_circumference_mm = one_set.get("limb_circumference_mm")
    width_mm = one_set.get("cuff_width_mm")
    if limb_circumference_mm is None or width_mm is None:
        return None
    target = {"target_tenths_mm": target_tenths_mm(species, limb_circumference_mm, document)}
    return target | describe(width_mm, limb_circumference_mm, species, document)


def choose_cuff(
    species: str, limb_circumference_mm: int, bag_mm: Iterable[int], cuff_document: Mapping[str, Any]
) -> dict[str, Any]:
    """Choose from the widths in a bag (mm, any order, repeats allowed) the cuff for a limb (mm).

    `target_tenths_mm` with `choice_mm`, `share_permille`, `fit`, `expect`; or with `no_fit` when the winner is poor.
    An empty bag raises ValueError. Source: shared_schemas/rules/README.md, rule 1.
    """
    widths = list(bag_mm)
    if not widths:
        raise ValueError("an empty bag: there is no cuff to choose")
    answer: dict[str, Any] = {"target_tenths_mm": target_tenths_mm(species, limb_circumference_mm, cuff_document)}
    choice_mm = _winner(species, limb_circumference_mm, widths, cuff_document)
    described = describe(choice_mm, limb_circumference_mm, species, cuff_document)
    if described["fit"] == FITS[-1]:
        return answer | {"no_fit": True}
    return answer | {"choice_mm": choice_mm} | described


def _winner(species: str, limb_circumference_mm: int, widths: list[int], document: Mapping[str, Any]) -> int:
    """The better of the nearest width at or below the target and the nearest above it."""
    numbers = document["numbers"]
    of_equal_fit = OF_EQUAL_FIT[document["choices"]["of_equal_fit"]]
    target_by_1000 = limb_circumference_mm * numbers["target_permille"][species]
    below = [width for width in widths if 1000 * width <= target_by_1000]
    above = [width for width in widths if 1000 * width > target_by_1000]
    if not below or not above:
        return max(below) if below else min(above)
    smaller, larger = max(below), min(above)
    places = [FITS.index(fit_of(width, limb_circumference_mm, species, numbers)) for width in (smaller, larger)]
    if places[0] != places[1]:
        return smaller if places[0] < places[1] else larger
    return of_equal_fit(target_by_1000, smaller, larger, numbers["between_sizes_permille"])
