"""The journal is append-only in the database itself: triggers at the newest migration, on both databases.

One way out is tried too: a letter that an `erased` entry names may become NULL, and nothing else of its row.
"""

from __future__ import annotations

import pytest
from alembic.migration import MigrationContext
from alembic.operations import Operations
from flask import Flask
from sqlalchemy import Column, Connection, Text, text
from sqlalchemy.exc import DBAPIError

from quietcuff.record.database import found_practice, reading, writing
from quietcuff.record.journal import JournalRow
from quietcuff.record.triggers import JOURNAL_TRIGGERS, missing_triggers

INSERT = text(
    "INSERT INTO journal (practice, position, id, kind, amends, sha, letter, device, number, chain, received_at_ms, flags)"
    " VALUES ('p', :position, :id, :kind, :amends, 'aa', :letter, 'd', 1, 'cc', 5, '')"
)
ROW = {"position": 1, "id": "one", "kind": "patient", "amends": None, "letter": b"{}"}


@pytest.fixture(autouse=True)
def journal(record: Flask) -> None:
    with writing() as orm:
        found_practice(orm, "p", "P", 1)
        orm.execute(INSERT, [ROW, {**ROW, "position": 2, "id": "two"}])


def run(statement: str) -> None:
    with writing() as orm:
        orm.execute(text(statement))


def refused(statement: str) -> bool:
    try:
        run(statement)
    except DBAPIError as error:
        assert "append-only" in str(error.orig)
        return True
    return False


def erase(letter_id: str) -> None:
    with writing() as orm:
        orm.execute(INSERT, {**ROW, "position": 3, "id": "three", "kind": "erased", "amends": letter_id})


def letters() -> list[object]:
    with reading() as connection:
        return list(connection.execute(text("SELECT letter FROM journal WHERE position < 3 ORDER BY position")).scalars())


def test_all_triggers_are_there_at_the_newest_migration(record: Flask, database_kind: str) -> None:
    with reading() as connection:
        assert missing_triggers(connection) == []
    assert len(JOURNAL_TRIGGERS[database_kind]) >= 2


CHANGES = (
    "DELETE FROM journal",
    "DELETE FROM journal WHERE id = 'one'",
    "UPDATE journal SET letter = NULL",
    "UPDATE journal SET position = position + 10",
    "UPDATE journal SET assessment = '{}' WHERE id = 'one'",
    "UPDATE journal SET sha = 'bb' WHERE id = 'one'",
)


def test_no_row_is_changed_or_deleted() -> None:
    assert [statement for statement in CHANGES if not refused(statement)] == []
    assert letters() == [b"{}", b"{}"]


def test_no_row_is_replaced_by_an_insert(database_kind: str) -> None:
    """SQLite's OR REPLACE deletes without a DELETE trigger; PostgreSQL has TRUNCATE in its place."""
    if database_kind == "postgresql":
        assert refused("TRUNCATE journal")
        assert refused("TRUNCATE practice CASCADE")
        return
    values = "'aa', X'00', 'd', 1, NULL, 'cc', 5, '', NULL"
    columns = "practice, position, id, kind, amends, sha, letter, device, number, box, chain, received_at_ms, flags, assessment"
    for key in ("'p', 9, 'one'", "'p', 1, 'nine'"):
        assert refused(f"INSERT OR REPLACE INTO journal ({columns}) VALUES ({key}, 'patient', NULL, {values})")
    by_rowid = f"INSERT OR REPLACE INTO journal (rowid, {columns}) VALUES (1, 'p', 9, 'nine', 'patient', NULL, {values})"
    assert refused(by_rowid)
    assert letters() == [b"{}", b"{}"]


def test_an_erased_letter_goes_and_only_that_one() -> None:
    erase("one")
    run("UPDATE journal SET letter = NULL WHERE id = 'one'")
    assert letters() == [None, b"{}"]
    assert refused("UPDATE journal SET letter = NULL WHERE id = 'two'")


def test_nothing_but_the_letter_goes_with_an_erasure() -> None:
    """Every other column by itself, so that none is forgotten in the trigger."""
    erase("one")
    others = {column.name for column in JournalRow.__table__.columns} - {"letter"}
    numbers = {"position", "number", "received_at_ms"}
    changes = [f"{name} = {77 if name in numbers else repr('x')}" for name in sorted(others)]
    assert len(changes) == 13
    passed = [change for change in changes if not refused(f"UPDATE journal SET letter = NULL, {change} WHERE id = 'one'")]
    assert passed == []
    assert refused("UPDATE journal SET flags = 'x' WHERE id = 'one'")


def test_other_bytes_in_place_of_an_erased_letter_are_refused() -> None:
    erase("one")
    with writing() as orm, pytest.raises(DBAPIError, match="append-only"):
        orm.execute(text("UPDATE journal SET letter = :other WHERE id = 'one'"), {"other": b"[]"})


def test_an_entry_of_another_kind_or_practice_erases_nothing() -> None:
    with writing() as orm:
        found_practice(orm, "q", "Q", 1)
        orm.execute(INSERT, {**ROW, "position": 3, "id": "three", "kind": "patient", "amends": "one"})
        elsewhere = text(str(INSERT).replace("'p'", "'q'"))
        orm.execute(elsewhere, {**ROW, "id": "four", "kind": "erased", "amends": "one"})
    assert refused("UPDATE journal SET letter = NULL WHERE id = 'one'")


def add_column_by_batch(connection: Connection) -> None:
    """What a careless migration would do to the journal on SQLite: copy it, drop it, rename the copy."""
    operations = Operations(MigrationContext.configure(connection))
    with operations.batch_alter_table("journal", recreate="always") as batch:
        batch.add_column(Column("careless", Text(), nullable=True))


def test_a_migration_that_copies_the_journal_is_noticed(database_kind: str) -> None:
    """On SQLite the copy has no triggers any more; on PostgreSQL a copy is made only on demand, a dropped one is seen."""
    with writing() as orm:
        connection = orm.connection()
        if database_kind == "sqlite":
            add_column_by_batch(connection)
            assert missing_triggers(connection) == list(JOURNAL_TRIGGERS["sqlite"])
            connection.execute(text("DELETE FROM journal"))  # and this is what they would have refused
        else:
            connection.execute(text("DROP TRIGGER journal_no_truncate ON journal"))
            assert missing_triggers(connection) == ["journal_no_truncate"]
            connection.execute(text("ALTER TABLE journal DISABLE TRIGGER ALL"))
            assert missing_triggers(connection) == list(JOURNAL_TRIGGERS["postgresql"])
