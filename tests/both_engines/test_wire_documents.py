"""30,000 documents of every wire kind, whole and spoiled, before three checkers: ours, the phone's and `jsonschema`.

The three agree on valid or not (JSON Schema, Draft 2020-12, is the standard outside); our two also name the same
first place and the same reason.
"""

from __future__ import annotations

import json
from collections import Counter
from functools import cache
from random import Random
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from quietcuff.contract.read_json import read_json
from quietcuff.contract.wire import check, check_measurement, wire_schema
from tests.both_engines.hostile import spoiled
from tests.both_engines.measurements import measurement
from tests.both_engines.phone_engine import PhoneEngine
from tests.both_engines.wire_documents import document, wire_names

SIZE = 30_000
SEED = 20200212
SPOILED_SHARE = 0.75
# What no schema can say; jsonschema admits these.
BEYOND_A_SCHEMA = {"id_twice", "numbers_and_beyond", "neither_numbers_nor_beyond"}


@cache
def standard(name: str) -> Draft202012Validator:
    """The same schema file before the general library."""
    beside = [(f"{other}.json", Resource.from_contents(wire_schema(other))) for other in wire_names()]
    return Draft202012Validator(wire_schema(name), registry=Registry().with_resources(beside))


def one(random: Random) -> tuple[str, str]:
    """A kind and the JSON text of a document meant for it."""
    name = random.choice(wire_names())
    whole = measurement(random) if name == "measurement.1" and random.random() < 0.5 else document(random, name)
    if random.random() < 0.02:
        whole = document(random, random.choice(wire_names()))
    return name, json.dumps(spoiled(random, whole) if random.random() < SPOILED_SHARE else whole)


def our_answer(name: str, value: Any) -> dict[str, Any]:
    """The server's check, in the form of the phone's answer."""
    problem = check_measurement(value) if name == "measurement.1" else check(name, value)
    return {"error": problem._asdict()} if problem else {}


def compare(name: str, text: str, theirs: dict[str, Any], seen: Counter[str]) -> None:
    """One document before all three."""
    value = read_json(text)
    ours = our_answer(name, value)
    assert ours == theirs, f"{name} {text}\nserver {ours}\nphone  {theirs}"
    why = ours["error"]["why"] if ours else "valid"
    in_schema = why == "valid" or why in BEYOND_A_SCHEMA
    assert standard(name).is_valid(json.loads(text)) == in_schema, f"{name} {text}: ours says {why}"
    seen[why] += 1
    seen[f"{name} {'valid' if in_schema else 'invalid'}"] += 1


def test_three_checkers_agree(phone: PhoneEngine) -> None:
    """0 differences; both answers are common enough to mean something, for each kind as well."""
    random, seen = Random(SEED), Counter()
    asked = [one(random) for _ in range(SIZE)]
    lines = [f'{{"do":"check","schema":"{name}","document":{text}}}' for name, text in asked]
    for (name, text), line in zip(asked, phone.answer_lines(lines), strict=True):
        compare(name, text, json.loads(line), seen)
    print(f"\nseed {SEED}: {seen['valid']} valid, {SIZE - seen['valid']} invalid; {dict(seen)}")
    assert SIZE * 0.1 < seen["valid"] < SIZE * 0.9
    assert all(seen[f"{name} {word}"] > 200 for name in wire_names() for word in ("valid", "invalid"))
    assert not [why for why in WHYS if not seen[why]]


WHYS = """not_an_object not_a_list not_text not_a_whole_number not_true_or_false unknown_key missing too_few_items
    too_many_items too_short too_long wrong_form not_in_list below_minimum above_maximum id_twice numbers_and_beyond
    neither_numbers_nor_beyond""".split()


@pytest.mark.parametrize("name", wire_names())
def test_schemas_are_of_the_standard(name: str) -> None:
    """Each file is itself a valid schema of Draft 2020-12."""
    Draft202012Validator.check_schema(wire_schema(name))


def test_a_difference_would_be_seen() -> None:
    """Another reason, another path, a valid against an invalid: each fails."""
    text, right = '{"species":"dog"}', {"error": {"path": "/sets", "why": "missing"}}
    compare("measurement.1", text, right, Counter())
    wrong = [{}, {"error": {"path": "/sets", "why": "too_short"}}, {"error": {"path": "", "why": "missing"}}]
    for answer in wrong:
        with pytest.raises(AssertionError):
            compare("measurement.1", text, answer, Counter())
