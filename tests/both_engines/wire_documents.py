"""Valid documents of every wire kind by chance, made from the schema files, for the three checkers to judge.

Understands the keywords our schemas use and no others; what it makes is valid by intention, the checkers decide.
"""

from __future__ import annotations

from random import Random
from typing import Any

from quietcuff.contract.shared_files import shared_folder
from quietcuff.contract.wire import wire_schema

HEX = "0123456789abcdef"
TEXT = "aZ é💓\u0000\u2028/~\"\\'"


def wire_names() -> list[str]:
    """`measurement.1` and the other kinds; api.json describes routes and is no kind."""
    return sorted(file.stem for file in (shared_folder() / "wire").glob("*.[0-9].json"))


def document(random: Random, name: str) -> Any:
    """A valid document of that kind."""
    return _value(random, wire_schema(name))


def _value(random: Random, schema: dict[str, Any]) -> Any:
    if "$ref" in schema:
        return document(random, schema["$ref"].removesuffix(".json"))
    if "enum" in schema:
        return random.choice(schema["enum"])
    return MAKERS[schema["type"]](random, schema)


def _object(random: Random, schema: dict[str, Any]) -> dict[str, Any]:
    if "properties" not in schema:
        return random.choice(({}, {"any": [None, {"thing": 1.5}]}, {"": {}}))
    kept = [key for key in schema["properties"] if key in schema.get("required", ()) or random.random() < 0.5]
    return {key: _value(random, schema["properties"][key]) for key in kept}


def _array(random: Random, schema: dict[str, Any]) -> list[Any]:
    least, most = schema.get("minItems", 0), schema.get("maxItems", 3)
    number = min(most, random.choice((least, least, least + 1, least + 2, random.choice((least, 8)))))
    return [_value(random, schema["items"]) for _ in range(number)]


def _string(random: Random, schema: dict[str, Any]) -> str:
    if "pattern" in schema:
        return PATTERNS[schema["pattern"]](random)
    least, most = schema.get("minLength", 0), schema.get("maxLength", 20)
    length = random.choice((least, least + 1, most if most < 100 else least))
    return "".join(random.choice(TEXT) for _ in range(length))


def _integer(random: Random, schema: dict[str, Any]) -> int | float:
    low, high = schema["minimum"], schema["maximum"]
    value = random.choice((low, high, min(high, low + 1), random.randint(low, high)))
    return float(value) if random.random() < 0.05 else value


def _hex(random: Random, number: int) -> str:
    return "".join(random.choice(HEX) for _ in range(number))


def _uuid(random: Random) -> str:
    return "-".join(_hex(random, number) for number in (8, 4, 4, 4, 12))


# A new pattern in a schema fails here, until someone says what a matching text looks like.
PATTERNS = {
    "^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}": _uuid,
    "^[0-9a-f]{64}": lambda random: _hex(random, 64),
    "^v[0-9]": lambda random: random.choice(("v1", "v2+0123456789ab", "v1\n")),
}
MAKERS = {
    "object": _object,
    "array": _array,
    "string": _string,
    "integer": _integer,
    "boolean": lambda random, schema: random.random() < 0.5,
}
