"""One phone engine for all tests of this folder: starting Node for each would take longer than asking it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.both_engines.phone_engine import PhoneEngine


@pytest.fixture(scope="session")
def phone() -> Iterator[PhoneEngine]:
    """The running engine."""
    with PhoneEngine() as engine:
        yield engine
