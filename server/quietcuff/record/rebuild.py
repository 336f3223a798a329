"""Drops what is read out of a journal and reads it out again; says what was not as it should have been.

What it proves: the projections hold nothing that the journal does not. Must not touch the journal.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import dataclass

from sqlalchemy import Connection, Table, delete, select

from quietcuff.record import journal, projections
from quietcuff.record.database import Head, Room, practice_room, reading
from quietcuff.record.entries import as_text

PAGE_ENTRIES = 500
RowPrints = dict[str, str]


@dataclass(frozen=True)
class Rebuilt:
    """One table of one practice: how many rows it has now, and the keys of those that were missing, extra or other."""

    practice: str
    table: str
    rows: int
    differing: tuple[str, ...]


def row_prints(connection: Connection, table: Table, practice: str) -> RowPrints:
    """A fingerprint of each row by its key: all columns count."""
    keys = [column.name for column in table.primary_key.columns]
    prints = {}
    for row in connection.execute(select(table).where(table.c.practice == practice)).mappings():
        key = as_text([row[name] for name in keys])
        prints[key] = hashlib.sha256(as_text(dict(row)).encode()).hexdigest()
    return prints


def rebuild_practice(practice: str) -> list[Rebuilt]:
    """Rebuilds one practice's projections in one transaction; its phones wait (and may be told to) meanwhile."""
    with practice_room(practice) as room:
        before = {table.name: row_prints(room.connection, table, practice) for table in projections.TABLES}
        for table in projections.TABLES:
            room.connection.execute(delete(table).where(table.c.practice == practice))
        _replay(room)
        return [_compare(room, table, before[table.name]) for table in projections.TABLES]


def _replay(room: Room) -> None:
    for after in range(0, room.position, PAGE_ENTRIES):
        last = min(after + PAGE_ENTRIES, room.position)
        entries = journal.entries_between(room.connection, room.practice, after, last)
        projections.apply_all(room.connection, room.practice, journal.letters_read(entries))


def _compare(room: Room, table: Table, before: RowPrints) -> Rebuilt:
    now = row_prints(room.connection, table, room.practice)
    differing = sorted(key for key in before.keys() | now.keys() if before.get(key) != now.get(key))
    return Rebuilt(room.practice, table.name, len(now), tuple(differing))


def rebuild_all(say: Callable[[str], None]) -> int:
    """Rebuilds every practice and says a line for each table; 1 when anything differed before, else 0."""
    with reading() as connection:
        practices = connection.execute(select(Head.practice).order_by(Head.practice)).scalars().all()
    rebuilt = [one for practice in practices for one in rebuild_practice(practice)]
    for one in rebuilt:
        say(f"{one.practice} {one.table}: {one.rows} rows, {len(one.differing)} differed {' '.join(one.differing)}".strip())
    return int(any(one.differing for one in rebuilt))
