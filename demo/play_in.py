"""Founds the invented practice and hands its letters in, the way a phone does: bundle by bundle, through sync.receive.

Done once for a folder of data; run again it changes nothing, and cut short it goes on with the same bytes. It must not write to
any table itself.
"""

from __future__ import annotations

import json
import os
from datetime import UTC, date, datetime
from pathlib import Path

from sqlalchemy import select

from demo.letters import PHONE, bundles_of
from quietcuff.app import create_app
from quietcuff.config import Settings
from quietcuff.record.database import Head, migrate, reading, writing
from quietcuff.record.passwords import generated_password
from quietcuff.record.people import NewPerson, by_login, found
from quietcuff.sync.receive import receive
from quietcuff.web.parts import parts

PRACTICE = "Hedgerow Visiting Practice"
PERSON, LOGIN, ROLE = "Wren Hollis", "wren", "veterinarian"


def fill(data: Path, today: date | None = None) -> str:
    """Brings the record in `data` to the newest tables, founds and plays in what is not there yet; gives the password.

    The visits lie in the two years before `today` (UTC; the real one where none is given). Ends with a reason where the folder holds
    a record that is not the demo's.
    """
    data.mkdir(parents=True, exist_ok=True)
    if (data / "quietcuff.sqlite").exists() and not (data / "password").exists():
        raise SystemExit(f"{data} holds a record that is not the demo's. Choose another folder with --data.")
    password = _password(data)
    app = create_app(Settings(data=data))
    with app.app_context():
        migrate()
        with reading() as connection:
            is_founded = by_login(connection, LOGIN) is not None
        if not is_founded:
            _found(password)
        _play_in(data / "playing_in", today or datetime.now(UTC).date())
    return password


def _password(data: Path) -> str:
    """Made before the practice is founded, so that an interrupted first run leaves no practice without its password."""
    file = data / "password"
    if not file.exists():
        with os.fdopen(os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as out:
            out.write(generated_password() + "\n")
    return file.read_text(encoding="utf-8").strip()


def _found(password: str) -> None:
    made = parts()
    person = NewPerson(LOGIN, PERSON, ROLE, made.passwords.hash(password))
    with writing() as orm:
        found(orm, PRACTICE, person, made.now_ms())


def _play_in(begun: Path, today: date) -> None:
    """Hands in every bundle while the journal is empty. The file `begun` stands from the first to the last of them and keeps the day
    the letters hang on, so that a half-filled demo is filled up with the same letters; one that was filled is left as people made it.
    """
    with reading() as connection:
        person = by_login(connection, LOGIN)
        assert person is not None
        position = connection.execute(select(Head.position).where(Head.practice == person.practice)).scalar_one()
    if position == 0:
        begun.write_text(today.isoformat(), encoding="utf-8")
    if not begun.exists():
        return
    for body in bundles_of(person.practice, person.id, date.fromisoformat(begun.read_text(encoding="utf-8"))):
        _hand_in(person.practice, body)
    begun.unlink()


def _hand_in(practice: str, body: bytes) -> None:
    answers = map(json.loads, receive(practice, PHONE, body, None, parts().now_ms()).splitlines()[1:])
    refused = [answer for answer in answers if answer["answer"] not in ("stored", "duplicate")]
    if refused:
        raise SystemExit(f"the record did not take these letters of the demo: {refused}")
