"""The words a measurement may use, read from its wire schema, so that a new word is tried from the day it is there."""

from __future__ import annotations

from functools import cache

from quietcuff.contract.wire import wire_schema


@cache
def words_at(*steps: str) -> tuple[str, ...]:
    """The `enum` below these properties of measurement.1; `[]` goes into the items of a list."""
    schema = wire_schema("measurement.1")
    for step in steps:
        schema = schema["items"] if step == "[]" else schema["properties"][step]
    return tuple(schema["enum"])
