"""Founds the invented practice and hands its letters in, the way a phone does: as a bundle, through sync.receive.

Done once for a folder of data; run again it changes nothing. It must not write to any table itself.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

from sqlalchemy import select

from demo.letters import PHONE, bundle_of
from quietcuff.app import create_app
from quietcuff.config import Settings
from quietcuff.record.database import Head, migrate, reading, writing
from quietcuff.record.passwords import generated_password
from quietcuff.record.people import NewPerson, by_login, found
from quietcuff.sync.receive import receive
from quietcuff.web.parts import parts

PRACTICE = "Hedgerow Visiting Practice"
PERSON, LOGIN, ROLE = "Wren Hollis", "wren", "veterinarian"


def fill(data: Path) -> str:
    """Brings the record in `data` to the newest tables, founds and plays in what is not there yet; gives the password.

    Ends with a reason where the folder holds a record that is not the demo's.
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
        _play_in()
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


def _play_in() -> None:
    """Hands in one bundle while the journal is empty; it is one transaction, so there is no half-filled demo."""
    with reading() as connection:
        person = by_login(connection, LOGIN)
        assert person is not None
        position = connection.execute(select(Head.position).where(Head.practice == person.practice)).scalar_one()
    if position > 0:
        return
    body = bundle_of(person.practice, person.id)
    answers = receive(person.practice, PHONE, body, None, parts().now_ms()).splitlines()[1:]
    refused = [answer for answer in map(json.loads, answers) if answer["answer"] != "stored"]
    if refused:
        raise SystemExit(f"the record did not take these letters of the demo: {refused}")
