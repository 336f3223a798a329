"""The doors to the database: what each lets through, and how a connection is set up."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from flask import Flask
from sqlalchemy import text
from sqlalchemy.exc import DBAPIError

from quietcuff.record import database
from quietcuff.record.database import Practice, db, found_practice, practice_room, reading, writing
from quietcuff.record.errors import PracticeUnknown, RecordBusy
from quietcuff.record.tables import FILES, METADATA


def found(practice: str = "p") -> None:
    with writing() as orm:
        found_practice(orm, practice, "Name", 1)


def test_the_migrated_tables_are_those_of_the_code(record: Flask) -> None:
    with reading() as connection:
        assert compare_metadata(MigrationContext.configure(connection), METADATA) == []


def test_every_file_with_a_table_is_listed() -> None:
    folder = Path(database.__file__).parent
    holding = {path.stem for path in folder.glob("*.py") if "__tablename__" in path.read_text(encoding="utf-8")}
    assert {file.__name__.rsplit(".", 1)[1] for file in FILES} == holding


def test_only_text_integers_and_bytes_are_used() -> None:
    kinds = {str(column.type) for table in METADATA.tables.values() for column in table.columns}
    assert kinds == {"TEXT", "BIGINT", "BLOB"}


def test_sqlite_is_durable_checks_references_and_waits(record: Flask, database_kind: str) -> None:
    """PostgreSQL is durable by default; here that its time limits hold in a writing transaction."""
    with writing() as orm:
        if database_kind == "sqlite":
            names = ("journal_mode", "synchronous", "foreign_keys", "busy_timeout", "query_only")
            found = [orm.execute(text(f"PRAGMA {name}")).scalar() for name in names]
            assert found == ["wal", 2, 1, database.SQLITE_BUSY_MS, 0]
        else:
            names = ("lock_timeout", "statement_timeout", "idle_in_transaction_session_timeout")
            found = [orm.execute(text(f"SHOW {name}")).scalar() for name in names]
            assert found == ["2s", "5s", "5s"]


def test_a_reading_transaction_cannot_write(record: Flask) -> None:
    found()
    insert = text("INSERT INTO practice (id, name, created_at_ms) VALUES ('q', 'Q', 1)")
    with reading() as connection, pytest.raises(DBAPIError):
        connection.execute(insert)
    with pytest.raises(DBAPIError):
        db.session.execute(insert)
    db.session.rollback()
    with writing() as orm:
        orm.execute(insert)
    assert [one.id for one in db.session.query(Practice).order_by(Practice.id)] == ["p", "q"]


def test_an_error_inside_leaves_nothing_behind(record: Flask) -> None:
    with pytest.raises(ValueError, match="mistake"), writing() as orm:
        found_practice(orm, "p", "Name", 1)
        raise ValueError("mistake")
    with pytest.raises(PracticeUnknown), practice_room("p"):
        pass


def test_references_are_held(record: Flask) -> None:
    with pytest.raises(DBAPIError), writing() as orm:
        orm.execute(text("INSERT INTO head (practice, epoch, position, chain) VALUES ('nobody', 'e', 0, '')"))


def test_a_locked_head_makes_the_next_one_wait_and_then_say_busy(
    record: Flask, monkeypatch: pytest.MonkeyPatch, database_kind: str
) -> None:
    found()
    monkeypatch.setattr(database, "LOCK_WAIT_MS", 200)
    monkeypatch.setattr(database, "SQLITE_BUSY_MS", 200)
    db.engine.dispose()  # connections made from here on wait no longer than that
    holding, done = threading.Event(), threading.Event()

    def hold() -> None:
        with record.app_context(), practice_room("p"):
            holding.set()
            done.wait(10)

    holder = threading.Thread(target=hold)
    holder.start()
    try:
        assert holding.wait(10)
        with pytest.raises(RecordBusy), practice_room("p"):
            pass
        with reading() as connection:  # a reader is never kept waiting
            assert connection.execute(text("SELECT position FROM head")).scalar() == 0
    finally:
        done.set()
        holder.join(10)
    with practice_room("p") as room:
        assert room.position == 0


def test_when_every_connection_is_in_use_the_next_one_is_told_to_come_again(database_url: str) -> None:
    app = Flask("record_of_a_test")
    app.config["SQLALCHEMY_ENGINE_OPTIONS"] = {"pool_size": 1, "max_overflow": 0, "pool_timeout": 0.1}
    database.set_up(app, database_url)
    with app.app_context():
        with reading(), pytest.raises(RecordBusy), writing():
            pass
        found()
        db.engine.dispose()
