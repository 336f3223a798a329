"""For the tests of this folder: a missing sentence raises, instead of showing its id."""

import pytest

from quietcuff.contract import words


@pytest.fixture(autouse=True)
def strict_words(monkeypatch: pytest.MonkeyPatch) -> None:
    """In production a gap reads `[id]`; here it must fail."""
    monkeypatch.setattr(words, "is_strict", True)
