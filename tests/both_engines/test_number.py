"""The number parser answers the same on the phone and on the server.

Cases: tests/vectors/number.json, worked by hand. Beyond them, random texts made of the parser's own signs: there only
agreement is asked, the cases say what is right.
"""

from __future__ import annotations

import json
import random
from pathlib import Path
from typing import Any

import pytest

from quietcuff.contract.number import parse_number
from tests.both_engines.phone_engine import PhoneEngine

CASES = json.loads((Path(__file__).parents[1] / "vectors" / "number.json").read_text(encoding="utf-8"))["cases"]
UNITS = {"mm": 1, "cm": 10, "mmHg": 1}
FOREIGN_SIGNS = ["\u066b", "\u0660", "\u0665", "\u06f3", "\u0967", "\uff11", "\u00a0"]
SIGNS = [*"0123459.,-+e x\t", *FOREIGN_SIGNS, "mm", "cm", "CM"]
RANDOM_TEXTS = 4000


def on_phone(phone: PhoneEngine, cases: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The phone's answers in the form of the server's: `code` instead of an error without a path."""
    answers = phone.answers({"do": "number", **{key: case[key] for key in case if key != "expect"}} for case in cases)
    return [{"code": answer["error"]["why"]} if "error" in answer else answer for answer in answers]


def test_there_are_enough_cases() -> None:
    """At least a hundred, so that a lost file does not pass for agreement."""
    assert len(CASES) >= 100


@pytest.mark.parametrize("case", CASES, ids=lambda case: repr(case["text"]))
def test_server_answers_as_worked_by_hand(case: dict[str, Any]) -> None:
    """Each case, in Python."""
    assert parse_number(case["text"], case.get("units"), case.get("decimal", False)) == case["expect"]


def test_phone_answers_as_worked_by_hand(phone: PhoneEngine) -> None:
    """Each case, through the phone's engine."""
    assert on_phone(phone, CASES) == [case["expect"] for case in CASES]


def test_both_agree_on_random_texts(phone: PhoneEngine) -> None:
    """The seed is fixed, so that a difference can be looked at again."""
    chance = random.Random(20180700)
    cases = [
        {
            "text": "".join(chance.choices(SIGNS, k=chance.randint(0, 7))),
            "units": UNITS,
            "decimal": chance.random() < 0.5,
        }
        for _ in range(RANDOM_TEXTS)
    ]
    answers = on_phone(phone, cases)
    differing = [
        (case, ours, theirs)
        for case, theirs in zip(cases, answers, strict=True)
        if (ours := parse_number(case["text"], case["units"], case["decimal"])) != theirs
    ]
    assert differing == []
    # Both kinds of answer must have come up, else the agreement would say nothing.
    assert sum("value_tenths" in answer for answer in answers) > RANDOM_TEXTS // 50
    assert len({answer["code"] for answer in answers if "code" in answer}) >= 5
