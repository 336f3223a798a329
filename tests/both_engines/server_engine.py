"""The server's engine behind the same calls as the phone's: check or compute, one answer a call.

Must never repair an answer: an exception in a rule is an error in the answer, as in the phone's engine.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from quietcuff.contract.rule_documents import rule_set
from quietcuff.contract.wire import check_measurement
from quietcuff.rules.assess import assess
from quietcuff.rules.cuff import choose_cuff


class Rules(NamedTuple):
    """The two doors of the engine; a mutated copy of it has two of its own."""

    assess: Callable[..., dict[str, Any]]
    choose_cuff: Callable[..., dict[str, Any]]


SERVER = Rules(assess, choose_cuff)


def answer(call: dict[str, Any], engine: Rules = SERVER) -> dict[str, Any]:
    """What the engine says to `{"do": "assess" | "cuff", …, "rules"?}`."""
    rules = call.get("rules") or rule_set()
    try:
        if call["do"] == "cuff":
            limb = call["species"], call["limb_circumference_mm"], call["bag_mm"]
            return engine.choose_cuff(*limb, rules["documents"]["cuff"])
        problem = check_measurement(call["measurement"])
        return {"error": problem._asdict()} if problem else engine.assess(call["measurement"], rules)
    except Exception as failure:  # noqa: BLE001 - whatever breaks inside a rule is the finding
        return {"error": {"path": "", "why": f"engine: {failure!r}"}}
