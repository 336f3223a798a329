"""Turn any one comparison of order of the phone's built engine, and a vector fails: the same demand as on the server's.

Works on the text of the built file, which keeps names and spacing; each copy lies in a temporary folder and runs once.
"""

from __future__ import annotations

import json
import re
import resource
import subprocess
from pathlib import Path
from typing import NamedTuple

from quietcuff.commands.phone_engine import node_program
from tests.both_engines.phone_engine import built_engine
from tests.both_engines.vectors import RULES, all_vectors, difference, question

# Only those of order: each costs a run of Node, and a turned equality breaks far more than a limit.
TURNED = {">=": ">", ">": ">=", "<=": "<", "<": "<="}
COMPARISON = re.compile(r"(?<= )(>=|<=|<|>)(?= )")
PART = re.compile(r"^// (\S+)$", re.MULTILINE)

# Turns that no answer can show, each with the reason: line of the built file (as written), and which operator in it.
_FLOOR = "whole_numbers: return rest !== 0 && rest < 0 !== den < 0 ? quotient - 1 : quotient;"
CANNOT_BE_SEEN = {
    f"{_FLOOR} (< -> <= at 1)": "a rest of 0 was ruled out before it",
    f"{_FLOOR} (< -> <= at 2)": "no denominator is 0",
    "whole_numbers: while ((root + 1n) * (root + 1n) <= value) root += 1n; (<= -> < at 1)": (
        "differs at squares only, and of a square the first guess is already the root"
    ),
    "agreement: return distance2 > 2 * mmhg && 2 * distance2 * 1e3 > mad_permille * mad4; (> -> >= at 2)": (
        "equality needs a MAD that is a multiple of 62.5: see test_comparison_mutants.py"
    ),
    'cautions: by_height: (looked) => aboveHeartMm(looked) < 0 ? "high" : "low" (< -> <= at 1)': (
        "the direction is asked for only from 50 mm on, so never at 0"
    ),
    "cuff: for (const width of bagMm) if (width * 1e3 <= targetThousandthsMm) smaller = smaller === void 0 ? width :"
    " Math.max(smaller, width); (<= -> < at 1)": "a width exactly on the target wins as either candidate",
    "cuff: if (rank(one) !== rank(other)) return rank(other) < rank(one); (< -> <= at 1)": (
        "asked only where the two differ"
    ),
}


class Mutant(NamedTuple):
    """`name`: the rule's file, the line around the comparison and what it became; `text`: the whole engine."""

    name: str
    rule: str
    text: str


def parts(text: str) -> list[tuple[str, int, int]]:
    """(rule, start, end) of what came from each file of client/src/rules."""
    heads = [*PART.finditer(text)]
    ends = [head.start() for head in heads[1:]] + [len(text)]
    found = [(head, end) for head, end in zip(heads, ends, strict=True) if head[1].startswith("src/rules/")]
    return [(Path(head[1]).stem, head.end(), end) for head, end in found]


def mutants(text: str) -> list[Mutant]:
    """Every comparison of the rules, turned once; comments are left alone."""
    found = []
    for rule, start, end in parts(text):
        for match in COMPARISON.finditer(text, start, end):
            line = text[text.rfind("\n", 0, match.start()) + 1 : text.find("\n", match.end())]
            if line.strip().startswith(("*", "/*", "//")):
                continue
            turned = TURNED[match[0]]
            place = match.start() - text.rfind("\n", 0, match.start())
            name = f"{rule}: {line.strip()} ({match[0]} -> {turned} at {line[: place - 1].count(match[0] + ' ') + 1})"
            found.append(Mutant(name, rule, text[: match.start()] + turned + text[match.end() :]))
    return found


def fails(text: str, rule: str, folder: Path) -> bool:
    """Whether an engine of this text fails a vector: those of its own rule first, all if they see nothing."""
    file = folder / "engine.mjs"
    file.write_text(text, encoding="utf-8")
    own = [vector for vector in all_vectors() if vector["id"].startswith(rule + "-")] if rule in RULES else []
    return (bool(own) and _fails(file, own)) or _fails(file, list(all_vectors()))


def _fails(file: Path, vectors: list[dict]) -> bool:
    asked = "".join(json.dumps(question(vector)) + "\n" for vector in vectors)
    words = [node_program(), str(file)]
    run = subprocess.run(words, input=asked, capture_output=True, text=True, preexec_fn=_little_time, check=False)
    lines = run.stdout.splitlines()
    if run.returncode != 0 or len(lines) != len(vectors):
        return True
    return any(difference(vector, json.loads(line)) for vector, line in zip(vectors, lines, strict=True))


def _little_time() -> None:
    """Two seconds of processor time, ten times what a run takes: a turned comparison may loop for ever."""
    resource.setrlimit(resource.RLIMIT_CPU, (2, 3))


def test_every_turned_comparison_is_seen(tmp_path: Path) -> None:
    """The survivors are exactly those that cannot be seen."""
    found = mutants(built_engine().read_text(encoding="utf-8"))
    print(f"{len(found)} comparisons turned")
    assert len(found) > 40, "the built file no longer looks as this test reads it"
    survivors = [mutant.name for mutant in found if not fails(mutant.text, mutant.rule, tmp_path)]
    assert sorted(survivors) == sorted(CANNOT_BE_SEEN)


def test_the_engine_as_built_passes(tmp_path: Path) -> None:
    """Copied and run the same way, but not turned."""
    assert not fails(built_engine().read_text(encoding="utf-8"), "agreement", tmp_path)
