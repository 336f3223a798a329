"""Every vector in both engines, and the form of the vector files themselves.

A vector is worked by hand from shared_schemas/rules/README.md and its sources; none is skipped, none is optional.
"""

from __future__ import annotations

import json
from collections import Counter
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from quietcuff.contract.wire import check_measurement
from tests.both_engines.phone_engine import PhoneEngine
from tests.both_engines.server_engine import answer
from tests.both_engines.vectors import FOLDER, RULES, all_vectors, difference, question, vectors_of

SCHEMA = json.loads((FOLDER / "vector.schema.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("vector", all_vectors(), ids=lambda vector: vector["id"])
def test_server_engine(vector: dict[str, Any]) -> None:
    """The Python engine says what was worked by hand."""
    assert difference(vector, answer(question(vector))) is None, vector["arithmetic"]


@pytest.mark.parametrize("rule", RULES)
def test_phone_engine(rule: str, phone: PhoneEngine) -> None:
    """The TypeScript engine says what was worked by hand."""
    answers = phone.answers(question(vector) for vector in vectors_of(rule))
    pairs = zip(vectors_of(rule), answers, strict=True)
    wrong = [(v["id"], found, v["arithmetic"]) for v, given in pairs if (found := difference(v, given))]
    assert wrong == []


@pytest.mark.parametrize("rule", RULES)
def test_files_have_the_one_form(rule: str) -> None:
    """The shape of a vector file; ids begin with the rule's name."""
    Draft202012Validator(SCHEMA).validate(list(vectors_of(rule)))
    assert [vector["id"] for vector in vectors_of(rule) if not vector["id"].startswith(rule + "-")] == []


def test_each_id_names_one_vector() -> None:
    """No id twice, over all files."""
    assert [name for name, count in Counter(vector["id"] for vector in all_vectors()).items() if count > 1] == []


def test_what_is_given_could_be_measured() -> None:
    """But for the vectors about errors, each measurement passes the wire check: a broken one would prove nothing."""
    measured = [v for v in all_vectors() if "sets" in v["given"] and "error" not in v["expect"]]
    assert [(v["id"], problem) for v in measured if (problem := check_measurement(v["given"]))] == []


def test_each_word_of_the_answer_is_expected_somewhere() -> None:
    """Verdicts, categories, reasons, advice, standings and cautions: none is without a vector."""
    text = json.dumps([vector["expect"] for vector in all_vectors()])
    words = """steady too_few falling scattered minimal low moderate high sedated not_adult low_pressure height cuff
        go_on stop_today enough second_look firm with_care not_placed by_hand no_number impossible first counted earlier
        provisional rest_short tense fighting calmed cuff_narrow cuff_wide cuff_unknown height_off irregular_rhythm
        oscillometric_high oscillometric_small many_set_aside one_sided rising pulse_differs sitting_up gap_short
        gap_unknown odd_gauge_value not_comparable unlikely_confirmed""".split()
    assert [word for word in words if f'"{word}"' not in text] == []


def test_a_difference_is_seen() -> None:
    """The comparison itself: a wrong value, a wrong type, a missing key, a longer list and a key too many all fail."""
    vector = {"expect": {"a": [1, {"b": 2}]}, "absent": ["/c/0"], "whole": True}
    assert difference(vector, {"a": [1, {"b": 2}]}) is None
    wrong: list[Any] = [{"a": [1, {"b": 3}]}, {"a": [True, {"b": 2}]}, {"a": [1, {}]}, {}, None]
    wrong += [{"a": [1, {"b": 2}, 3]}, {"a": [1, {"b": 2}], "c": [0]}]
    wrong += [{"a": [1, {"b": 2, "d": 4}]}, {"a": [1.0, {"b": 2}]}]
    assert [given for given in wrong if difference(vector, given) is None] == []
