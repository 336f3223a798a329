"""Strict reading of JSON: what two languages could read differently is refused before anything looks at it.

Answers a plain value. Must never repair: a twice-written key or half a surrogate pair has no one right reading.
"""

import json
import re
from typing import Any

# The deepest document of the wire (a reading in a bundle line) needs 6; 16 leaves room for kinds to come.
MOST_DEPTH = 16
# More digits than any double holds (its largest has 309): in the other engine they would read as infinity.
MOST_NUMBER_LETTERS = 300

_SURROGATE_ESCAPE = re.compile(r"\\u[dD][89a-fA-F]")
_SURROGATE = re.compile("[\ud800-\udfff]")


class Unreadable(ValueError):
    """The bytes are no JSON document of ours.

    `code`: not_utf8, not_json, key_twice, not_finite, too_deep or lone_surrogate.
    """

    def __init__(self, code: str) -> None:
        super().__init__(code)
        self.code = code


def read_json(text: bytes | str) -> Any:
    """Read one JSON document; whole floats (120.0) become ints. Raises Unreadable.

    Refuses invalid UTF-8, a byte order mark, a key twice in one object, NaN, infinities (also as 1e400), numbers of
    more than 300 characters, nesting deeper than 16, and half of a surrogate pair, as a key or as a value.
    """
    text = _decoded(text)
    try:
        value = _DECODER.decode(text)
    except Unreadable:
        raise
    except RecursionError:
        raise Unreadable("too_deep") from None
    except ValueError:
        raise Unreadable("not_json") from None
    # Counting brackets costs next to nothing and clears most documents without a walk.
    if text.count("[") + text.count("{") > MOST_DEPTH and _is_too_deep(value):
        raise Unreadable("too_deep")
    if _SURROGATE_ESCAPE.search(text) and _has_lone_surrogate(value):
        raise Unreadable("lone_surrogate")
    return value


def _decoded(text: bytes | str) -> str:
    """Text without surrogates of its own; those written as escapes are found after reading."""
    if isinstance(text, str):
        if _SURROGATE.search(text):
            raise Unreadable("lone_surrogate")
        return text
    try:
        return text.decode("utf-8")
    except UnicodeDecodeError:
        raise Unreadable("not_utf8") from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    value = dict(pairs)
    if len(value) != len(pairs):
        raise Unreadable("key_twice")
    return value


def _whole_number(text: str) -> int:
    if len(text) > MOST_NUMBER_LETTERS:
        raise Unreadable("not_finite")
    return int(text)


def _number(text: str) -> int | float:
    value = float(text)
    if value in (float("inf"), float("-inf")):
        raise Unreadable("not_finite")
    return int(value) if value.is_integer() else value


def _constant(_text: str) -> None:
    raise Unreadable("not_finite")


_DECODER = json.JSONDecoder(
    object_pairs_hook=_object, parse_int=_whole_number, parse_float=_number, parse_constant=_constant
)


def _is_too_deep(value: Any) -> bool:
    """Level by level, so that a deep document cannot exhaust the stack here."""
    level, depth = [value], 0
    while level := [item for item in level if isinstance(item, (dict, list))]:
        depth += 1
        if depth > MOST_DEPTH:
            return True
        level = [child for item in level for child in (item.values() if isinstance(item, dict) else item)]
    return False


def _has_lone_surrogate(value: Any) -> bool:
    """Whether any key or text of a document (of bounded depth) holds half of a pair."""
    if isinstance(value, str):
        return _SURROGATE.search(value) is not None
    if isinstance(value, dict):
        return any(_has_lone_surrogate(key) or _has_lone_surrogate(item) for key, item in value.items())
    return isinstance(value, list) and any(_has_lone_surrogate(item) for item in value)
