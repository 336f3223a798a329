"""Turns a wire schema (a closed list of JSON Schema keywords) into one fast check.

Answers, for a value, the first problem as (JSON Pointer, why) or None. Must never ignore a keyword: an unknown one
raises while the file is loaded, since a limit that is written but not enforced is worse than none.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

Found = tuple[str, str] | None
Check = Callable[[Any], Found]

_ANYWHERE = {"$schema", "$id", "title", "description", "type"}
_OF_TYPE = {
    "object": {"properties", "required", "additionalProperties"},
    "array": {"items", "minItems", "maxItems"},
    "string": {"enum", "pattern", "minLength", "maxLength"},
    "integer": {"enum", "minimum", "maximum"},
    "boolean": set(),
}


class SchemaError(ValueError):
    """A wire schema uses something outside the closed keyword list, or uses a keyword in another way."""


def compile_schema(schema: Any, beside: Callable[[str], Check]) -> Check:
    """Compile one schema; `beside` gives the check of a file named by `$ref`. Raises SchemaError."""
    _demand(isinstance(schema, dict), f"not a schema: {schema!r}")
    if "$ref" in schema:
        is_alone = set(schema) == {"$ref"} and _is_file_beside(schema["$ref"])
        _demand(is_alone, f"$ref stands alone and names a file beside: {schema}")
        return beside(schema["$ref"])
    kind = schema.get("type")
    _demand(isinstance(kind, str) and kind in _OF_TYPE, f"type is one of {sorted(_OF_TYPE)}, not {kind!r}")
    unknown = set(schema) - _ANYWHERE - _OF_TYPE[kind]
    _demand(not unknown, f"keywords outside the closed list: {sorted(unknown)}")
    if kind == "object":
        return _object(schema, beside)
    if kind == "array":
        return _array(schema, beside)
    return {"string": _string, "integer": _integer, "boolean": _boolean}[kind](schema)


def escaped(key: str) -> str:
    """A key as one step of a JSON Pointer (RFC 6901)."""
    return key.replace("~", "~0").replace("/", "~1")


def _demand(condition: bool, message: str) -> None:
    if not condition:
        raise SchemaError(message)


def _is_file_beside(name: Any) -> bool:
    return isinstance(name, str) and re.fullmatch(r"[a-z_]+\.[0-9]+\.json", name) is not None


def _is_whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def _limits(schema: Mapping[str, Any], least: str, most: str) -> tuple[int | None, int | None]:
    for keyword in (least, most):
        _demand(keyword not in schema or _is_whole(schema[keyword]), f"{keyword} is a whole number: {schema}")
    return schema.get(least), schema.get(most)


def _object(schema: Mapping[str, Any], beside: Callable[[str], Check]) -> Check:
    """Unknown keys first, then missing ones, then the properties in the schema's order."""
    if "properties" not in schema:
        _demand("required" not in schema and "additionalProperties" not in schema, f"no properties: {schema}")
        return lambda value: None if isinstance(value, dict) else ("", "not_an_object")
    _demand(schema.get("additionalProperties") is False, f"additionalProperties must be false: {schema}")
    required = schema.get("required", [])
    _demand(isinstance(schema["properties"], dict), f"properties is an object: {schema}")
    names = list(schema["properties"])
    _demand(isinstance(required, list) and all(name in names for name in required), f"required: {required}")
    steps = [(name, "/" + escaped(name), compile_schema(of, beside)) for name, of in schema["properties"].items()]
    known = frozenset(schema["properties"])

    def check_object(value: Any) -> Found:
        if not isinstance(value, dict):
            return ("", "not_an_object")
        if not value.keys() <= known:
            return ("/" + escaped(min(value.keys() - known)), "unknown_key")
        for name in required:
            if name not in value:
                return ("/" + escaped(name), "missing")
        for name, step, check in steps:
            if name in value and (found := check(value[name])):
                return (step + found[0], found[1])
        return None

    return check_object


def _array(schema: Mapping[str, Any], beside: Callable[[str], Check]) -> Check:
    _demand("items" in schema, f"an array says what its items are: {schema}")
    least, most = _limits(schema, "minItems", "maxItems")
    check_item = compile_schema(schema["items"], beside)

    def check_array(value: Any) -> Found:
        if not isinstance(value, list):
            return ("", "not_a_list")
        if least is not None and len(value) < least:
            return ("", "too_few_items")
        if most is not None and len(value) > most:
            return ("", "too_many_items")
        for index, item in enumerate(value):
            if found := check_item(item):
                return (f"/{index}{found[0]}", found[1])
        return None

    return check_array


def _string(schema: Mapping[str, Any]) -> Check:
    """Lengths are counted in code points, as JSON Schema says; the phone's language counts otherwise by itself."""
    least, most = _limits(schema, "minLength", "maxLength")
    listed = _listed(schema, lambda word: isinstance(word, str))
    matches = _pattern(schema["pattern"]) if "pattern" in schema else None

    def check_string(value: Any) -> Found:
        if not isinstance(value, str):
            return ("", "not_text")
        if least is not None and len(value) < least:
            return ("", "too_short")
        if most is not None and len(value) > most:
            return ("", "too_long")
        if matches is not None and not matches(value):
            return ("", "wrong_form")
        if listed is not None and value not in listed:
            return ("", "not_in_list")
        return None

    return check_string


def _pattern(pattern: Any) -> Callable[[str], Any]:
    r"""`$` is refused: here it also matches before a last newline, on the phone it does not; \d and \w differ too."""
    _demand(isinstance(pattern, str) and pattern.startswith("^"), f"a pattern begins with ^: {pattern!r}")
    _demand("$" not in pattern and "\\" not in pattern, f"a pattern has no $ and no backslash: {pattern!r}")
    return re.compile(pattern).match


def _integer(schema: Mapping[str, Any]) -> Check:
    """True and False are no integers, although Python counts them as such."""
    least, most = _limits(schema, "minimum", "maximum")
    listed = _listed(schema, _is_whole)

    def check_integer(value: Any) -> Found:
        if not isinstance(value, int) or isinstance(value, bool):
            return ("", "not_a_whole_number")
        if least is not None and value < least:
            return ("", "below_minimum")
        if most is not None and value > most:
            return ("", "above_maximum")
        if listed is not None and value not in listed:
            return ("", "not_in_list")
        return None

    return check_integer


def _boolean(_schema: Mapping[str, Any]) -> Check:
    return lambda value: None if isinstance(value, bool) else ("", "not_true_or_false")


def _listed(schema: Mapping[str, Any], is_right: Callable[[Any], bool]) -> frozenset[Any] | None:
    if "enum" not in schema:
        return None
    words = schema["enum"]
    _demand(isinstance(words, list) and len(words) > 0 and all(map(is_right, words)), f"enum: {words!r}")
    return frozenset(words)
