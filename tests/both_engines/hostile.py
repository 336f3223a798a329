"""Documents with something wrong in them: wrong types, unknown and missing keys, numbers beyond reason, odd text.

Works on any JSON value and knows no schema. Half of the time what it does is harmless: then both sides must accept it.
"""

from __future__ import annotations

import copy
from random import Random
from typing import Any

JUNK: tuple[Any, ...] = (
    None, True, False, "", "x", "dog", "é", "💓", "\u0000", "a" * 41, "a" * 300, [], {}, [[]], [None], {"id": "a"},
    {"": 0},
    0, 1, -1, -0.0, 1.0, 140.0, 1.5, 1e3, 0.1, 1e300, -1e300, 5e-324, 999, 1000, -401, 401, 10001, 604801,
    2**31, 2**53 - 1, 2**53, 2**53 + 1, -(2**53) - 1, 2**63, 10**30, "140", "1e3", "null", "\u2028", "/~",
    "01890000-0000-7000-8000-000000000000", "01890000-0000-7000-8000-00000000000G",
    "01890000-0000-7000-8000-0000000000001",
)  # fmt: skip
KEYS = ("x", "", "é", "💓", "\uffff", "a/b", "a~b", "0", "Pulse", "__proto__", "constructor", "toString", "valueOf")
READING_KEYS = ("beyond", "systolic_mmhg", "pulse_bpm", "set_aside", "id", "taken_s")

# Where a value stands: its container and the key or index in it.
Place = tuple[Any, Any]


def spoiled(random: Random, document: Any, most: int = 2) -> Any:
    """A copy with one to `most` changes; now and then another value altogether."""
    if random.random() < 0.02:
        return copy.deepcopy(random.choice(JUNK))
    document = copy.deepcopy(document)
    for _ in range(random.randint(1, most)):
        _change(random, document)
    return document


def _change(random: Random, document: Any) -> None:
    places = list(_places(document))
    if not places:
        return
    container, key = random.choice(places)
    kind = random.random()
    if kind < 0.35:
        container[key] = copy.deepcopy(random.choice(JUNK))
    elif kind < 0.5:
        _nudge(random, container, key)
    elif kind < 0.65:
        del container[key]
    elif kind < 0.8:
        _add(random, container, key)
    else:
        _mix(random, places, container, key)


def _places(value: Any) -> Any:
    if isinstance(value, dict | list):
        for key in list(value) if isinstance(value, dict) else range(len(value)):
            yield value, key
            yield from _places(value[key])


def _nudge(random: Random, container: Any, key: Any) -> None:
    """A little off, or the same number as a float: 140.0 is whole."""
    value = container[key]
    if isinstance(value, str):
        container[key] = random.choice((value + "x", value[:-1], value.upper(), value + "💓", value[::-1]))
    elif isinstance(value, int | float) and not isinstance(value, bool) and abs(value) < 2**53:
        container[key] = random.choice((float(value), value + 1, value - 1, -value, value + 0.5, str(value)))


def _add(random: Random, container: Any, key: Any) -> None:
    if isinstance(container, list):
        container.insert(key, copy.deepcopy(random.choice((*JUNK, *container))))
    else:
        value = random.choice((*JUNK, 150, "no_sound", "above_gauge"))
        container[random.choice((*KEYS, *READING_KEYS))] = copy.deepcopy(value)


def _mix(random: Random, places: list[Place], container: Any, key: Any) -> None:
    """Another value of the same document in this place: ids twice, words where others belong."""
    other, other_key = random.choice(places)
    if other is not container and key in (range(len(container)) if isinstance(container, list) else container):
        container[key] = copy.deepcopy(other[other_key]) if _still(other, other_key) else None


def _still(container: Any, key: Any) -> bool:
    return key in container if isinstance(container, dict) else key < len(container)
