"""Turn any one comparison of the Python engine, and a vector fails: every limit is guarded on both sides.

A turn that cannot change an answer is listed with its reason, as few as possible. The phone's engine has no such
turning of its own; it is held by the same vectors and by the random agreement with this one.
"""

from __future__ import annotations

import pytest

from quietcuff.rules.assess import assess
from tests.both_engines.comparison_mutants import Mutant, comparison_mutants, copied_engine, mutated_engine
from tests.both_engines.server_engine import Rules, answer
from tests.both_engines.vectors import RULES, all_vectors, difference, question

MUTANTS = list(comparison_mutants())
# Turns that no answer can show, each with the reason. A line here that is no longer in the engine fails the test.
CANNOT_BE_SEEN = {
    "agreement._suspects: 2 * 1000 * twice_away > suspect['mad_permille'] * four_mads"
    " -> 2 * 1000 * twice_away >= suspect['mad_permille'] * four_mads": (
        "equality needs a MAD that is a multiple of 62.5 (4.448 = 556/125, medians in halves) and a deviation of 278;"
        " possible values span 280, and then more than half of them lie within 2 of the median: no such MAD"
    ),
    "averaging.average_mmhg: 0 <= row < len(interval['t_thousandths']) -> 0 <= row <= len(interval['t_thousandths'])": (
        "only a window of 11 would show it, and no window is longer than 10"
    ),
    "cautions.by_height: case.given['cuff_above_heart_mm'] < 0 -> case.given['cuff_above_heart_mm'] <= 0": (
        "the direction is asked for only from 50 mm on, so never at 0"
    ),
    "cuff._winner: 1000 * width > target_by_1000 -> 1000 * width >= target_by_1000": (
        "a width exactly on the target would be both candidates, and it wins either way: no fit is better than its own"
    ),
    "cuff._winner: places[0] < places[1] -> places[0] <= places[1]": "asked only where the two differ",
}


def failing_vector(engine: Rules, rule: str) -> str | None:
    """The first vector that fails in this engine, or None."""
    vectors = all_vectors(rule if rule in RULES else RULES[0])
    return next((vector["id"] for vector in vectors if difference(vector, answer(question(vector), engine))), None)


def survivors() -> list[str]:
    """Turned comparisons that no vector saw."""
    return [mutant.name for mutant in MUTANTS if failing_vector(mutated_engine(mutant), mutant.file.stem) is None]


def test_every_turned_comparison_is_seen() -> None:
    """The survivors are exactly those that cannot be seen."""
    print(f"{len(MUTANTS)} comparisons turned")
    assert sorted(survivors()) == sorted(CANNOT_BE_SEEN)


def test_a_copy_without_a_turn_passes() -> None:
    """The copying itself breaks nothing, and the real engine is back in its place."""
    assert failing_vector(copied_engine(), "assess") is None
    import quietcuff.rules.assess as again

    assert again.assess is assess


@pytest.mark.parametrize("mutant", MUTANTS[:1], ids=lambda mutant: mutant.name)
def test_a_turn_is_a_turn(mutant: Mutant) -> None:
    """The name shows another comparison on either side, and the copy answers something else."""
    before, after = mutant.name.split(": ", 1)[1].split(" -> ")
    assert before != after
    assert failing_vector(mutated_engine(mutant), mutant.file.stem) is not None
