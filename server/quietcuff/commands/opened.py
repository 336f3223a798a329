"""Opens the record for a command, or says in one sentence why not. Must not do the command's work."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from quietcuff.app import create_app
from quietcuff.record.database import is_at_newest, reading


class NotMigrated(Exception):
    """The tables are not those of this version; the message says what to do."""


@contextmanager
def opened_record() -> Iterator[None]:
    """An application context on the database of the settings. Raises SettingsRefused and NotMigrated."""
    with create_app().app_context():
        with reading() as connection:
            if not is_at_newest(connection):
                raise NotMigrated("The database has not the tables of this version. Run `quietcuff migrate` first.")
        yield
