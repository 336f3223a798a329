"""Rule documents with one leaf changed: each number by one up and down, each choice to another word.

Answers which changes no vector sees. It must never change a document on disk, nor know what a number means.
"""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from tests.both_engines.vectors import all_vectors, difference, question

# What no engine knows, beside the words it does know at the same place (a caution's direction may become another's).
UNKNOWN_WORD = "another_word"
KNOWN_WORDS = {"direction": ("high", "low", "either", "by_height"), "weight": ("headline", "minor")}
BATCH = 40

AnswerAll = Callable[[list[dict[str, Any]]], list[dict[str, Any]]]


class Mutant(NamedTuple):
    """`name` says document, JSON Pointer and the new value; `rules` is what the engines are handed."""

    rule: str
    name: str
    rules: dict[str, Any]


def engine_part(rules: Mapping[str, Any]) -> dict[str, Any]:
    """A rule set with what an engine may read, and no more: the sources would be sent thousands of times."""
    kept = {rule: {"numbers": d["numbers"], "choices": d["choices"]} for rule, d in rules["documents"].items()}
    return {"name": rules["name"], "documents": kept}


def document_mutants(rules: Mapping[str, Any]) -> Iterator[Mutant]:
    """Every mutant of every document, one leaf each."""
    base = engine_part(rules)
    for rule, document in base["documents"].items():
        for pointer, value in _leaves(document, ()):
            for changed in _changes(pointer, value):
                mutated = copy.deepcopy(base)
                _put(mutated["documents"][rule], pointer, changed)
                yield Mutant(rule, f"{rule}: /{'/'.join(map(str, pointer))} = {changed}", mutated)


def survives(mutant: Mutant, answer_all: AnswerAll) -> bool:
    """Whether every vector still passes; an answer that is an error of the engine counts as a failure."""
    vectors = all_vectors(mutant.rule)
    for start in range(0, len(vectors), BATCH):
        batch = vectors[start : start + BATCH]
        answers = answer_all([question(vector, mutant.rules) for vector in batch])
        if any(difference(vector, given) for vector, given in zip(batch, answers, strict=True)):
            return False
    return True


def _leaves(value: Any, pointer: tuple[Any, ...]) -> Iterator[tuple[tuple[Any, ...], Any]]:
    if isinstance(value, dict):
        for key, below in value.items():
            yield from _leaves(below, (*pointer, key))
    elif isinstance(value, list):
        for index, below in enumerate(value):
            yield from _leaves(below, (*pointer, index))
    else:
        yield pointer, value


def _changes(pointer: tuple[Any, ...], value: int | str) -> list[int | str]:
    if isinstance(value, int):
        return [value - 1, value + 1]
    known = KNOWN_WORDS.get(pointer[1], ()) if len(pointer) == 3 else ()
    return [UNKNOWN_WORD, *(word for word in known if word != value)]


def _put(document: Any, pointer: tuple[Any, ...], value: Any) -> None:
    for step in pointer[:-1]:
        document = document[step]
    document[pointer[-1]] = value
