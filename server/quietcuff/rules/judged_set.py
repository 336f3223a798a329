"""One set as rules 1 to 6 leave it: what rules 7 and 8 look at.

Holds facts only. It must not decide anything: each rule keeps to its own file.
"""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from quietcuff.rules.standing import Reading


class JudgedSet(NamedTuple):
    """`averaged` is the window, or without one all eligible readings; the sum and n are theirs, exact."""

    given: Mapping[str, Any]
    eligible: Sequence[Reading]
    window: Sequence[Reading]
    averaged: Sequence[Reading]
    systolic_sum: int
    verdict: str
    bounds_decide: bool
    above_gauge_and_eligible: int
    shown: dict[str, Any]

    @property
    def systolic_n(self) -> int:
        """How many systolic values are averaged; every averaged reading has one."""
        return len(self.averaged)
