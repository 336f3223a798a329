"""Founds the invented practice and hands its letters in, the way a phone does: as a bundle, through sync.receive.

Done once for a folder of data; run again it changes nothing. It must not write to any table itself.
"""

from __future__ import annotations

import json
import os
import time
from contextlib import redirect_stdout
from io import StringIO
from pathlib import Path

from demo.letters import PHONE, bundle_of
from quietcuff import cli
from quietcuff.app import create_app
from quietcuff.config import Settings
from quietcuff.record.database import Head, reading
from quietcuff.record.passwords import generated_password
from quietcuff.record.people import by_login
from quietcuff.sync.receive import receive
from sqlalchemy import select

PRACTICE = "Hedgerow Visiting Practice"
PERSON = "Wren Hollis"
LOGIN = "wren"


def fill(data: Path) -> str:
    """Brings the record in `data` to the newest tables, founds and plays in what is not there yet; gives the password."""
    data.mkdir(parents=True, exist_ok=True)
    password_file = _password_file(data)
    _command(data, "migrate")
    app = create_app(Settings(data=data))
    with app.app_context():
        with reading() as connection:
            is_founded = by_login(connection, LOGIN) is not None
        if not is_founded:
            _command(data, "found", "--practice", PRACTICE, "--name", PERSON, "--login", LOGIN, "--role", "veterinarian",
                     "--password-file", str(password_file))
        _play_in()
    return password_file.read_text(encoding="utf-8").strip()


def _password_file(data: Path) -> Path:
    """Made before the practice is founded, so that an interrupted first run leaves no practice without its password."""
    file = data / "password"
    if not file.exists():
        with os.fdopen(os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as out:
            out.write(generated_password() + "\n")
    return file


def _command(data: Path, *words: str) -> None:
    """Runs a sub-command of `quietcuff` on the demo's data and on no other."""
    for name in [name for name in os.environ if name.startswith("QUIETCUFF_")]:
        del os.environ[name]
    os.environ["QUIETCUFF_DATA"] = str(data)
    with redirect_stdout(StringIO()):
        code = cli.main(list(words))
    if code != 0:
        raise SystemExit(f"quietcuff {words[0]} ended with {code}")


def _play_in() -> None:
    """Hands in one bundle while the journal is empty; it is one transaction, so there is no half-filled demo."""
    with reading() as connection:
        person = by_login(connection, LOGIN)
        assert person is not None
        position = connection.execute(select(Head.position).where(Head.practice == person.practice)).scalar_one()
    if position > 0:
        return
    body = bundle_of(person.practice, person.id)
    answers = receive(person.practice, PHONE, body, None, time.time_ns() // 1_000_000).splitlines()[1:]
    refused = [answer for answer in map(json.loads, answers) if answer["answer"] != "stored"]
    if refused:
        raise SystemExit(f"the record did not take these letters of the demo: {refused}")
