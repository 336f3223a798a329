"""The vectors of tests/vectors/v1, and the first way in which an answer differs from one.

Must never know an engine: it reads files and compares values.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parent.parent / "vectors"
RULES = ("cuff", "standing", "agreement", "averaging", "bounds", "height", "category", "cautions", "assess")

Vector = dict[str, Any]


@cache
def vectors_of(rule: str) -> tuple[Vector, ...]:
    """The vectors of one file, in its order."""
    return tuple(json.loads((FOLDER / "v1" / f"{rule}.json").read_text(encoding="utf-8")))


@cache
def all_vectors(first: str = RULES[0]) -> tuple[Vector, ...]:
    """Every vector, those of the rule `first` before the others: they are the ones likely to see its faults."""
    order = (first, *(rule for rule in RULES if rule != first))
    return tuple(vector for rule in order for vector in vectors_of(rule))


def question(vector: Vector, rules: dict[str, Any] | None = None) -> dict[str, Any]:
    """The call that a vector makes, as both engines take it; without `rules` by their own v1."""
    given = vector["given"]
    call = {"do": "cuff", **given} if "bag_mm" in given else {"do": "assess", "measurement": given}
    return call if rules is None else {**call, "rules": rules}


def difference(vector: Vector, answer: Any) -> str | None:
    """Where the answer is not what the vector says, or None."""
    found = _unlike(vector["expect"], answer, "")
    if found is None and vector.get("whole") and answer != vector["expect"]:
        found = f"more than was expected: {answer}"
    for pointer in vector.get("absent", ()):
        found = found or (f"{pointer} should be absent" if _stands(answer, pointer) else None)
    return found


def _unlike(expected: Any, found: Any, pointer: str) -> str | None:
    """Each key of an object, each item of a list, and the very value of everything else: 1, 1.0 and true are three."""
    if type(expected) is not type(found):
        return f"{pointer}: {expected!r} expected, {found!r} found"
    if isinstance(expected, dict):
        missing = [key for key in expected if key not in found]
        if missing:
            return f"{pointer}/{missing[0]}: absent"
        return next((x for key in expected if (x := _unlike(expected[key], found[key], f"{pointer}/{key}"))), None)
    if isinstance(expected, list) and len(expected) == len(found):
        pairs = enumerate(zip(expected, found, strict=True))
        return next((x for index, (a, b) in pairs if (x := _unlike(a, b, f"{pointer}/{index}"))), None)
    return None if expected == found else f"{pointer}: {expected!r} expected, {found!r} found"


def _stands(answer: Any, pointer: str) -> bool:
    for step in pointer.split("/")[1:]:
        if isinstance(answer, list):
            if int(step) >= len(answer):
                return False
            answer = answer[int(step)]
        elif isinstance(answer, dict) and step in answer:
            answer = answer[step]
        else:
            return False
    return True
