"""What every command prints: one JSON line for programs, one plain sentence for the person.

Must never print a sentence to stdout: a program reads that.
"""

import json
import sys
from typing import Any

from quietcuff.contract.words import say

# Begins a `why` that the phone's engine gives when something inside it broke.
ENGINE_BROKE = "engine: "


def error(path: str, why: str) -> dict[str, Any]:
    """An error as it travels: a JSON Pointer and a code."""
    return {"error": {"path": path, "why": why}}


def print_answer(answer: dict[str, Any]) -> None:
    """One line, sent at once: whoever pipes line by line waits for it."""
    print(json.dumps(answer), flush=True)


def finish(answer: dict[str, Any]) -> int:
    """Print an answer; an error also as a sentence on stderr. Returns the exit code, 2 for an error."""
    print_answer(answer)
    if "error" not in answer:
        return 0
    print(sentence(answer["error"]["path"], answer["error"]["why"]), file=sys.stderr)
    return 2


def sentence(path: str, why: str) -> str:
    """Where and why, for a person."""
    where = path or say("why-whole-document")
    if why.startswith(ENGINE_BROKE):
        return say("why-line", path=where, reason=f"{say('why-engine')} ({why.removeprefix(ENGINE_BROKE)})")
    return say("why-line", path=where, reason=say("why-" + why.replace("_", "-")))
