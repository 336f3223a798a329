"""`quietcuff found`: founds a practice with its first person, and prints how to sign in.

The password comes from a file, from the keyboard, or is made here and printed once. It is never an argument: those are
seen by everybody on the machine and kept in a shell's history.
"""

import argparse
import getpass
import sys
from pathlib import Path

from quietcuff.commands.opened import NotMigrated, opened_record
from quietcuff.config import SettingsRefused
from quietcuff.record.database import writing
from quietcuff.record.errors import RecordError
from quietcuff.record.passwords import PASSWORD_LEAST, PASSWORD_MOST, generated_password
from quietcuff.record.people import ROLES, NewPerson, found
from quietcuff.web.parts import parts

_REFUSED = {
    "login_taken": "This login is taken; logins are unique on a server. Choose another.",
    "login_length": "A login has 1 to 80 characters.",
    "name_length": "The names of a practice and a person have 1 to 120 characters.",
}


class _PasswordRefused(Exception):
    """The message says what to do."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Who and what is founded."""
    parser.add_argument("--practice", required=True, help="name of the practice")
    parser.add_argument("--name", required=True, help="full name of its first person")
    parser.add_argument("--login", required=True, help="what this person types to sign in")
    parser.add_argument("--role", required=True, choices=ROLES)
    parser.add_argument("--password-file", type=Path, help="first line of this file; without it you are asked, or, "
                        "where nobody is at the keyboard, a password is made and printed once")


def run(arguments: argparse.Namespace) -> int:
    """Founds; 0 when done, 2 with a reason on standard error when something given cannot be used."""
    try:
        password, was_made = _password(arguments.password_file)
        with opened_record():
            _found(arguments, password)
    except (SettingsRefused, NotMigrated, _PasswordRefused) as refused:
        print(refused, file=sys.stderr)
        return 2
    except RecordError as refused:
        print(_REFUSED.get(refused.code, refused.code), file=sys.stderr)
        return 2
    print(f"login: {arguments.login}")
    if was_made:
        print(f"password: {password}")
    return 0


def _found(arguments: argparse.Namespace, password: str) -> None:
    made = parts()
    person = NewPerson(arguments.login, arguments.name, arguments.role, made.passwords.hash(password))
    with writing() as orm:
        found(orm, arguments.practice, person, made.now_ms())


def _password(file: Path | None) -> tuple[str, bool]:
    """The password, and whether it was made here."""
    if file is None and not sys.stdin.isatty():
        return generated_password(), True
    try:
        given = _typed() if file is None else file.read_text(encoding="utf-8").split("\n")[0]
    except OSError as error:
        raise _PasswordRefused(f"The password file cannot be read: {error.strerror}.") from error
    if not PASSWORD_LEAST <= len(given) <= PASSWORD_MOST:
        raise _PasswordRefused(f"A password has {PASSWORD_LEAST} to {PASSWORD_MOST} characters; four words do well.")
    return given, False


def _typed() -> str:
    """Asked twice: nobody sees what they type, and the first person of a practice has nobody to ask for another."""
    given = getpass.getpass("Password: ")
    if getpass.getpass("Once more: ") != given:
        raise _PasswordRefused("The two passwords differ.")
    return given
