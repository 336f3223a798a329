"""The built marshmallow schemas: same verdict and same first problem as the wire check, and nothing converted."""

from typing import Any

import pytest
from marshmallow import Schema

from quietcuff.contract.schemas import NotAsAgreed, load, schema_class
from quietcuff.contract.wire import check, wire_schema

DEVICE = "01890a5d-ac96-774b-bcce-b302099a8057"

BAD: list[Any] = [
    {},
    {"login": "a"},
    {"password": "b"},
    {"login": "a", "password": "b", "remember": True},
    {"login": 1, "password": "b"},
    {"login": "a", "password": None},
    {"login": "", "password": ""},
    {"login": "a", "password": "b", "device": DEVICE.upper()},
    {"login": "a", "password": "b", "device": DEVICE + "\n"},  # `$` in a pattern would let this pass
    {"password": 3, "login": 3, "zebra": 1, "ant": 1},
    [],
    None,
    "login",
]


@pytest.mark.parametrize("body", BAD)
def test_the_first_problem_is_the_wire_checks(body: Any) -> None:
    expected = check("sign_in.1", body)
    assert expected is not None
    with pytest.raises(NotAsAgreed) as refused:
        load("sign_in.1", body)
    assert refused.value.problem == expected
    assert refused.value.messages == {expected.path: [expected.why]}


def test_a_good_body_comes_back_unchanged() -> None:
    body = {"login": "a", "password": "b", "device": DEVICE}
    assert load("sign_in.1", body) == body


@pytest.mark.parametrize("value", ["120", 120.5, True])
def test_nothing_is_converted(value: Any) -> None:
    """A stock Integer field of marshmallow takes all three, and cuts 120.5 to 120."""
    body = {"species": "dog", "sets": [{"method": "doppler", "readings": []}], "rest_s": value}
    with pytest.raises(NotAsAgreed) as refused:
        load("measurement.1", body)
    assert refused.value.problem == ("/rest_s", "not_a_whole_number")


def test_one_field_per_top_level_property() -> None:
    built = schema_class("patient.1")
    assert issubclass(built, Schema)
    wire = wire_schema("patient.1")
    fields = built().fields
    assert list(fields) == list(wire["properties"])
    assert [name for name, field in fields.items() if field.required] == wire["required"]


def test_unknown_name() -> None:
    with pytest.raises(KeyError):
        load("patient.99", {})
