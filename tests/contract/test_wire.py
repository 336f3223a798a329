"""The wire check: every keyword, its limits from both sides, and the one order in which the first problem is found.

Sources: JSON Schema draft 2020-12 (validation vocabulary: lengths in characters of RFC 8259, limits inclusive) and
RFC 6901 section 3 and 4 (JSON Pointer, ~0 and ~1). The order and the codes are the project's: the phone has the same.
"""

from typing import Any

import pytest

from quietcuff.contract.compile_schema import SchemaError, compile_schema
from quietcuff.contract.wire import Problem, check, check_measurement, compiled, is_known
from quietcuff.contract.shared_files import shared_folder


def no_files(name: str) -> Any:
    raise AssertionError(f"no file was expected, {name} was asked for")


def first(schema: dict[str, Any], value: Any) -> tuple[str, str] | None:
    return compile_schema(schema, no_files)(value)


WHOLE = {"type": "integer", "minimum": -2, "maximum": 2}
TEXT = {"type": "string", "minLength": 2, "maxLength": 3}
SHAPED = {"type": "string", "pattern": "^[a-c]{2}"}
PAIR = {"type": "array", "items": {"type": "boolean"}, "minItems": 1, "maxItems": 2}
OBJECT = {
    "type": "object",
    "properties": {"z": {"type": "boolean"}, "a": WHOLE, "m": TEXT},
    "required": ["z", "a"],
    "additionalProperties": False,
}

BY_KEYWORD: list[tuple[dict[str, Any], Any, tuple[str, str] | None]] = [
    ({"type": "boolean"}, True, None),
    ({"type": "boolean"}, 1, ("", "not_true_or_false")),
    ({"type": "boolean"}, None, ("", "not_true_or_false")),
    (WHOLE, -3, ("", "below_minimum")),
    (WHOLE, -2, None),
    (WHOLE, 2, None),
    (WHOLE, 3, ("", "above_maximum")),
    (WHOLE, 2**60, ("", "above_maximum")),
    (WHOLE, True, ("", "not_a_whole_number")),  # True == 1 in Python
    (WHOLE, 1.5, ("", "not_a_whole_number")),
    (WHOLE, float("inf"), ("", "not_a_whole_number")),
    (WHOLE, float("nan"), ("", "not_a_whole_number")),
    (WHOLE, "1", ("", "not_a_whole_number")),
    ({"type": "integer", "enum": [1, 3]}, 3, None),
    ({"type": "integer", "enum": [1, 3]}, 2, ("", "not_in_list")),
    ({"type": "integer", "enum": [1, 3]}, True, ("", "not_a_whole_number")),
    (TEXT, "a", ("", "too_short")),
    (TEXT, "ab", None),
    (TEXT, "abc", None),
    (TEXT, "abcd", ("", "too_long")),
    (TEXT, "\N{GRINNING FACE}", ("", "too_short")),  # one character, two UTF-16 units, four bytes
    (TEXT, "\N{GRINNING FACE}" * 3, None),
    (TEXT, 12, ("", "not_text")),
    (SHAPED, "ab", None),
    (SHAPED, "abx", None),  # a pattern without an end says nothing of the rest: maxLength does
    (SHAPED, "xab", ("", "wrong_form")),
    ({"type": "string", "enum": ["dog", "cat"]}, "cat", None),
    ({"type": "string", "enum": ["dog", "cat"]}, "Cat", ("", "not_in_list")),
    (PAIR, [], ("", "too_few_items")),
    (PAIR, [True], None),
    (PAIR, [True, False], None),
    (PAIR, [True, False, 1], ("", "too_many_items")),
    (PAIR, [True, 0], ("/1", "not_true_or_false")),
    (PAIR, {"0": True}, ("", "not_a_list")),
    (OBJECT, [], ("", "not_an_object")),
    (OBJECT, None, ("", "not_an_object")),
    (OBJECT, {"z": True, "a": 1}, None),
    (OBJECT, {"z": True, "a": 1, "m": "ab"}, None),
    ({"type": "object", "description": "free in shape"}, {"any": [1.5, None]}, None),
    ({"type": "object"}, "{}", ("", "not_an_object")),
]


@pytest.mark.parametrize(("schema", "value", "found"), BY_KEYWORD)
def test_each_keyword(schema: dict[str, Any], value: Any, found: tuple[str, str] | None) -> None:
    assert first(schema, value) == found


ORDER: list[tuple[Any, tuple[str, str]]] = [
    # unknown before missing before the properties; the smallest unknown by code point, wherever it stands
    ({"y": 1, "b": 1, "a": "x"}, ("/b", "unknown_key")),
    ({"\N{GRINNING FACE}": 1, "\uffee": 1}, ("/\uffee", "unknown_key")),  # by UTF-16 units it would be the other
    ({"a": "x"}, ("/z", "missing")),
    ({}, ("/z", "missing")),  # `required` says z first, although a sorts before it
    ({"a": "x", "z": 3}, ("/z", "not_true_or_false")),  # the schema's order, not the document's
    ({"m": 1, "a": 5, "z": True}, ("/a", "above_maximum")),
    ({"m/n~": 1, "z": True, "a": 1}, ("/m~1n~0", "unknown_key")),
]


@pytest.mark.parametrize(("value", "found"), ORDER)
def test_order_of_an_object(value: Any, found: tuple[str, str]) -> None:
    assert first(OBJECT, value) == found


def test_length_before_pattern_before_list_and_depth_first() -> None:
    text = {"type": "string", "maxLength": 2, "pattern": "^a", "enum": ["ab"]}
    assert first(text, "xyz") == ("", "too_long")
    assert first(text, "xy") == ("", "wrong_form")
    assert first(text, "ac") == ("", "not_in_list")
    inner = {"type": "object", "properties": {"a": WHOLE}, "additionalProperties": False}
    outer = {"type": "object", "properties": {"one": inner, "two": WHOLE}, "additionalProperties": False}
    assert first(outer, {"two": 9, "one": {"a": 9}}) == ("/one/a", "above_maximum")


def test_pointer_escapes_as_in_rfc_6901_section_5() -> None:
    """The RFC's own example keys: "a/b" is /a~1b, "m~n" is /m~0n."""
    empty: dict[str, Any] = {"type": "object", "properties": {}, "additionalProperties": False}
    assert first(empty, {"a/b": 1}) == ("/a~1b", "unknown_key")
    assert first(empty, {"m~n": 8}) == ("/m~0n", "unknown_key")
    assert first(empty, {"": 0}) == ("/", "unknown_key")


BEYOND_THE_LIST: list[Any] = [
    {"type": "number"},
    {"type": "null"},
    {"type": ["string", "integer"]},
    {},
    True,
    {"type": "string", "format": "date"},
    {"type": "string", "minimum": 1},
    {"type": "integer", "maxLength": 1},
    {"type": "integer", "exclusiveMinimum": 1},
    {"type": "integer", "minimum": 1.5},
    {"type": "integer", "minimum": True},
    {"type": "integer", "enum": []},
    {"type": "integer", "enum": ["1"]},
    {"type": "integer", "enum": [True]},
    {"type": "string", "enum": [1]},
    {"type": "string", "pattern": "[a]"},
    {"type": "string", "pattern": "^[a]$"},
    {"type": "string", "pattern": "^\\d"},
    {"type": "string", "const": "a"},
    {"type": "boolean", "enum": [True]},
    {"type": "array"},
    {"type": "array", "items": {"type": "boolean"}, "uniqueItems": True},
    {"type": "array", "items": [{"type": "boolean"}]},
    {"type": "object", "properties": {"a": {"type": "boolean"}}},
    {"type": "object", "properties": {}, "additionalProperties": True},
    {"type": "object", "properties": {}, "additionalProperties": {"type": "boolean"}},
    {"type": "object", "properties": {}, "required": ["a"], "additionalProperties": False},
    {"type": "object", "additionalProperties": False},
    {"type": "object", "required": []},
    {"type": "object", "properties": {"a": {"type": "date"}}, "additionalProperties": False},
    {"oneOf": [{"type": "boolean"}]},
    {"anyOf": [], "type": "boolean"},
    {"$ref": "patient.1.json", "type": "object"},
    {"$ref": "#/properties/a"},
    {"$ref": "../rules/v1/cuff.json"},
    {"$ref": "https://quietcuff.invalid/wire/patient.1.json"},
]


@pytest.mark.parametrize("schema", BEYOND_THE_LIST)
def test_anything_outside_the_closed_list_raises_at_load(schema: Any) -> None:
    with pytest.raises(SchemaError):
        compile_schema(schema, no_files)


def test_a_reference_is_the_file_beside() -> None:
    assert compile_schema({"$ref": "patient.1.json"}, lambda name: compiled(name.removesuffix(".json"))) is compiled(
        "patient.1"
    )


def test_every_wire_file_compiles_and_names_are_only_names() -> None:
    names = [path.stem for path in (shared_folder() / "wire").glob("*.*.json")]
    assert "measurement.1" in names
    for name in names:
        assert check(name, None) == Problem("", "not_an_object")
    for name in ("measurement.2", "../rules/v1/cuff", "measurement.1.json", "", "measurement.01", "api"):
        assert not is_known(name)
        with pytest.raises(KeyError):
            check(name, {})


CAT = {"species": "cat", "name": "Mo"}


@pytest.mark.parametrize(
    ("name", "document", "problem"),
    [
        ("bag.1", {"name": "Van", "cuffs": [{"width_mm": 1}, {"width_mm": 500, "mark": "blue"}]}, None),
        ("bag.1", {"name": "Van", "cuffs": []}, None),
        ("bag.1", {"name": "Van", "cuffs": [{"width_mm": 501}]}, Problem("/cuffs/0/width_mm", "above_maximum")),
        ("bag.1", {"name": "Van", "gauges": [{"name": "G", "type": "spring"}]}, Problem("/gauges/0/type", "not_in_list")),
        ("bag.1", {"cuffs": []}, Problem("/name", "missing")),
        ("patient.1", {**CAT, "handling": {"grade": 3}, "bruises": True, "sites_not_used": []}, None),
        ("patient.1", {**CAT, "handling": {"grade": -1}}, Problem("/handling/grade", "below_minimum")),
        ("patient.1", {**CAT, "sites_not_used": [{"site": "forearm", "why": "wound", "until_day": 80_001}]},
         Problem("/sites_not_used/0/until_day", "above_maximum")),
        ("patient.1", {**CAT, "identifiers": [{"kind": "chip", "text": ""}]}, Problem("/identifiers/0/text", "too_short")),
    ],
)
def test_the_limits_of_a_bag_and_of_what_is_told_of_an_animal(name: str, document: Any, problem: Problem | None) -> None:
    assert check(name, document) == problem


def measurement(*readings: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"species": "dog", "sets": [{"method": "doppler", "readings": list(readings)}], **more}


A = {"id": "a", "systolic_mmhg": 120}
TOO_HIGH = {"id": "b", "systolic_mmhg": 1000}
NO_VALUE = {"id": "b", "beyond": "no_value"}
NUMBERS = ("systolic_mmhg", "mean_mmhg", "diastolic_mmhg", "pulse_bpm", "palpated_bpm")


@pytest.mark.parametrize(
    ("document", "problem"),
    [
        (measurement(), None),
        (measurement(A, {"id": "b", "beyond": "no_sound", "taken_s": 3, "set_aside": "moved"}), None),
        (measurement(A, {"id": "b", "systolic_mmhg": 999}), None),
        (measurement(A, TOO_HIGH), Problem("/sets/0/readings/1/systolic_mmhg", "above_maximum")),
        (measurement(A, A), Problem("/sets/0/readings/1/id", "id_twice")),
        (measurement({"id": "b"}), Problem("/sets/0/readings/0", "neither_numbers_nor_beyond")),
        (measurement({"id": "b", "mean_mmhg": 90}), Problem("/sets/0/readings/0", "neither_numbers_nor_beyond")),
        (measurement({**A, "beyond": "no_value"}), Problem("/sets/0/readings/0", "numbers_and_beyond")),
        *((measurement(NO_VALUE | {key: 9}), Problem("/sets/0/readings/0", "numbers_and_beyond")) for key in NUMBERS),
        # what a schema can say comes first, wherever it stands
        (measurement(A, A, owner_present=1), Problem("/owner_present", "not_true_or_false")),
        (measurement(A, A, zebra=1), Problem("/zebra", "unknown_key")),
        (measurement(systolic=None), Problem("/systolic", "unknown_key")),
        (measurement(age_months=None), Problem("/age_months", "not_a_whole_number")),
    ],
)
def test_measurement(document: Any, problem: Problem | None) -> None:
    assert check_measurement(document) == problem


def test_ids_of_the_whole_measurement_come_before_numbers_or_beyond() -> None:
    """The phone looks in two rounds; of two faults both must name the same one."""
    assert check_measurement(measurement({"id": "b"}, A, A)) == Problem("/sets/0/readings/2/id", "id_twice")


def test_ids_are_unique_across_sets() -> None:
    two_sets = measurement(A)
    two_sets["sets"] = two_sets["sets"] * 2
    assert check_measurement(two_sets) == Problem("/sets/1/readings/0/id", "id_twice")
