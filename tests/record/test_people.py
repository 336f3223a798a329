"""Who may be added to a practice: each reason to refuse, at its limits, and that nothing is half founded."""

from __future__ import annotations

import pytest
from flask import Flask
from sqlalchemy import text

from quietcuff.record.database import reading, writing
from quietcuff.record.errors import RecordError
from quietcuff.record.people import NewPerson, add_person, found

GOOD = {"login": "ada", "name": "Ada Hill", "role": "nurse", "password_hash": "x"}


def practices() -> int:
    with reading() as connection:
        return connection.execute(text("SELECT count(*) FROM practice")).scalar_one()


@pytest.mark.parametrize(
    ("practice", "changes", "code"),
    [
        ("", {}, "name_length"),
        ("  ", {}, "name_length"),
        ("x" * 121, {}, "name_length"),
        ("Hill", {"name": " "}, "name_length"),
        ("Hill", {"name": "x" * 121}, "name_length"),
        ("Hill", {"login": " "}, "login_length"),
        ("Hill", {"login": "x" * 81}, "login_length"),
        ("Hill", {"role": "owner"}, "role_unknown"),
    ],
)
def test_what_cannot_be_founded(record: Flask, practice: str, changes: dict[str, str], code: str) -> None:
    with pytest.raises(RecordError) as refused, writing() as orm:
        found(orm, practice, NewPerson(**{**GOOD, **changes}), 1)
    assert (refused.value.code, practices()) == (code, 0)


def test_the_limits_themselves_are_good_and_a_login_is_taken_once(record: Flask) -> None:
    """Written in another way it is the same login, in another practice as well."""
    with writing() as orm:
        found(orm, "x" * 120, NewPerson(**{**GOOD, "login": "x" * 80, "name": "x" * 120}), 1)
        practice, _ = found(orm, "y", NewPerson(**GOOD), 1)
    with pytest.raises(RecordError) as refused, writing() as orm:
        add_person(orm, practice, NewPerson(**{**GOOD, "login": " ADA "}), 1)
    assert (refused.value.code, practices()) == ("login_taken", 2)
