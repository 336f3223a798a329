"""Each number and word of each rule document matters: change one, and a vector fails in both engines.

This exposes a number that an engine carries itself, and a limit that no vector guards. Without it the words
"single source" are empty. Survivors are listed by document, pointer and value.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from quietcuff.contract.rule_documents import leaves, rule_set
from tests.both_engines.document_mutants import AnswerAll, Mutant, document_mutants, engine_part, survives
from tests.both_engines.phone_engine import PhoneEngine
from tests.both_engines.server_engine import answer

MUTANTS = list(document_mutants(rule_set()))


def server_answers(calls: list[dict]) -> list[dict]:
    """The Python engine, as the mutants ask it."""
    return [answer(call) for call in calls]


@pytest.fixture(params=["server", "phone"])
def answer_all(request: pytest.FixtureRequest, phone: PhoneEngine) -> AnswerAll:
    """Either engine."""
    engines: dict[str, Callable] = {"server": server_answers, "phone": phone.answers}
    return engines[request.param]


def test_every_change_of_a_leaf_is_seen(answer_all: AnswerAll) -> None:
    """No survivor."""
    assert [mutant.name for mutant in MUTANTS if survives(mutant, answer_all)] == []


def test_every_leaf_is_changed() -> None:
    """At least two changes for a number and one for a word, over every leaf that the documents have."""
    named = {mutant.name.rsplit(" = ", 1)[0] for mutant in MUTANTS}
    there = {f"{rule}: {pointer}" for rule, document in rule_set()["documents"].items() for pointer in leaves(document)}
    assert named == there
    print(f"{len(there)} leaves, {len(MUTANTS)} mutants")


def test_the_unchanged_documents_survive(answer_all: AnswerAll) -> None:
    """The check can pass: handed over as arguments, the documents as they stand answer every vector."""
    assert survives(Mutant("cuff", "as it stands", engine_part(rule_set())), answer_all)
