"""Every screen in every state, in a real browser: nobody is kept out by size, colour, motion, a missing name or a narrow screen.

Places: demo/places. Questions: asked.py and in_page.js. Sources: WCAG 2.2 (W3C) by axe-core's rules and by 1.4.1, 1.4.4, 1.4.10,
1.4.12, 2.3.3, 2.5.8, 4.1.2; 44 and 60 px, gaps of 8 and 6 px and 7:1 for text are the project's own, and stricter.
"""

from __future__ import annotations

import pytest

from tests.design.conftest import QUESTIONS, Seen
from tests.design.places import PLACES


@pytest.mark.parametrize("place", [place.name for place in PLACES])
@pytest.mark.parametrize("question", QUESTIONS)
def test_nothing_is_found(seen: Seen, question: str, place: str) -> None:
    """Each question at each place."""
    assert seen.faults[question][place] == []


def test_every_result_is_told_by_its_words(seen: Seen) -> None:
    """Without any colour each result is another phrase: four bands, no band, and a bound without an average."""
    told = {place: phrase for place, phrase in seen.phrases.items() if place.startswith("result-")}
    bands = [told[f"result-{band}"] for band in ("minimal", "low", "moderate", "high", "scattered", "sedated")]
    assert len(set(bands)) == len(bands)
    assert all(phrase.strip() for phrase in told.values())
