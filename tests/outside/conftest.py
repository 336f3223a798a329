"""Both engines behind one question, so that a fact from outside is asked of each."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import pytest

from tests.both_engines.phone_engine import PhoneEngine
from tests.both_engines.server_engine import answer

Ask = Callable[[list[dict[str, Any]]], list[dict[str, Any]]]


@pytest.fixture(scope="session")
def phone() -> Iterator[PhoneEngine]:
    """The phone's engine, started once."""
    with PhoneEngine() as engine:
        yield engine


@pytest.fixture(params=["server", "phone"])
def ask(request: pytest.FixtureRequest, phone: PhoneEngine) -> Ask:
    """Answers to calls as in tests/both_engines, from either engine."""
    engines: dict[str, Ask] = {"server": lambda calls: [answer(call) for call in calls], "phone": phone.answers}
    return engines[request.param]
