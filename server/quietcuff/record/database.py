"""Opens the database and holds the only doors to a transaction, for SQLite and PostgreSQL alike.

Reading: `db.session` or `reading()`. Writing: `writing()`, and `practice_room()` for anything that touches a journal.
A reading transaction is read-only in the database itself: a write through the wrong door fails loudly instead of
meeting SQLite's lock upgrade (which cannot wait) under load. Holds no table but those of the practice and its head.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any
from uuid import uuid4

import flask_migrate
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from flask import Flask
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import BigInteger, Connection, Engine, ForeignKey, LargeBinary, MetaData, Text, event, insert, select
from sqlalchemy.exc import OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeout
from sqlalchemy.orm import DeclarativeBase, Mapped, Session, mapped_column, registry

from quietcuff.record.errors import PracticeUnknown, RecordBusy

MIGRATIONS = Path(__file__).parent / "migrations"
LOCK_WAIT_MS = 2_000
STATEMENT_LIMIT_MS = 5_000
SQLITE_BUSY_MS = 5_000
FIRST_CHAIN = "0" * 64
_LOCK_STATES = {"55P03", "57014", "40001", "40P01"}  # lock and statement time-outs, serialization, deadlock


class Base(DeclarativeBase):
    """Text, integer, bytes and nothing else: so the two databases cannot differ in how they read a value."""

    registry = registry(
        metadata=MetaData(
            naming_convention={
                "ix": "ix_%(table_name)s_%(column_0_N_name)s",
                "uq": "uq_%(table_name)s_%(column_0_N_name)s",
                "ck": "ck_%(table_name)s_%(constraint_name)s",
                "fk": "fk_%(table_name)s_%(column_0_N_name)s",
                "pk": "pk_%(table_name)s",
            }
        ),
        type_annotation_map={str: Text(), int: BigInteger(), bytes: LargeBinary()},
    )


db = SQLAlchemy(model_class=Base)


class Practice(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """A practice: the address under which letters are filed."""

    __tablename__ = "practice"
    id: Mapped[str] = mapped_column(primary_key=True)
    name: Mapped[str]
    created_at_ms: Mapped[int]


class Head(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """Where a practice's journal ends. Locking this row is what makes positions dense and in commit order."""

    __tablename__ = "head"
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), primary_key=True)
    epoch: Mapped[str]
    position: Mapped[int]
    chain: Mapped[str]


@dataclass
class Room:
    """A practice's journal while its head is locked by us; `position` and `chain` move on as entries are added."""

    connection: Connection
    practice: str
    epoch: str
    position: int
    chain: str


def set_up(app: Flask, database_url: str) -> None:
    """Binds the database to the application and prepares each connection; touches no table."""
    app.config["SQLALCHEMY_DATABASE_URI"] = database_url
    app.config.setdefault("SQLALCHEMY_ENGINE_OPTIONS", {"pool_pre_ping": not database_url.startswith("sqlite")})
    db.init_app(app)
    flask_migrate.Migrate(app, db, directory=str(MIGRATIONS))
    with app.app_context():
        prepare_engine(db.engine)


def migrate() -> None:
    """Brings the tables up to the newest migration; needs an application context."""
    flask_migrate.upgrade(directory=str(MIGRATIONS))


def is_at_newest(connection: Connection) -> bool:
    """Whether the tables are those of the newest migration that came with this version."""
    return set(MigrationContext.configure(connection).get_current_heads()) == _newest_migrations()


@cache  # files do not change while it runs
def _newest_migrations() -> frozenset[str]:
    return frozenset(ScriptDirectory(str(MIGRATIONS)).get_heads())


def prepare_engine(engine: Engine) -> None:
    """Sets each new connection up and decides how each transaction begins."""
    on_sqlite = engine.dialect.name == "sqlite"
    if on_sqlite:
        event.listen(engine, "connect", _prepare_sqlite_connection)
    event.listen(engine, "begin", _begin_on_sqlite if on_sqlite else _begin_on_postgresql)


def _prepare_sqlite_connection(raw: Any, _record: Any) -> None:
    raw.isolation_level = None  # the driver must not open transactions of its own, see _begin_on_sqlite
    for pragma in (
        f"busy_timeout={SQLITE_BUSY_MS}",  # first: the next one may already have to wait
        "journal_mode=WAL",
        "synchronous=FULL",  # an answered entry survives a power cut
        "foreign_keys=ON",
    ):
        raw.execute(f"PRAGMA {pragma}")


def _is_writing(connection: Connection) -> bool:
    return bool(connection.get_execution_options().get("quietcuff_writing"))


def _begin_on_sqlite(connection: Connection) -> None:
    """Takes the write lock at the start: a lock upgrade later fails at once, however long one would have waited."""
    writing_now = _is_writing(connection)
    connection.exec_driver_sql(f"PRAGMA query_only={'OFF' if writing_now else 'ON'}")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writing_now else "BEGIN")


def _begin_on_postgresql(connection: Connection) -> None:
    if not _is_writing(connection):
        connection.exec_driver_sql("SET TRANSACTION READ ONLY")
        return
    connection.exec_driver_sql(
        f"SET LOCAL lock_timeout = {LOCK_WAIT_MS}; SET LOCAL statement_timeout = {STATEMENT_LIMIT_MS}; "
        f"SET LOCAL idle_in_transaction_session_timeout = {STATEMENT_LIMIT_MS}"
    )


@contextmanager
def _writing_connection() -> Iterator[Connection]:
    """One writing transaction; a lock that does not come free in time becomes RecordBusy."""
    try:
        with db.engine.connect().execution_options(quietcuff_writing=True) as connection, connection.begin():
            yield connection
    except OperationalError as error:
        if is_busy(error):
            raise RecordBusy() from error
        raise
    except PoolTimeout as error:  # every connection is in use: the next one waits as long, so say so instead
        raise RecordBusy() from error


def is_busy(error: OperationalError) -> bool:
    """Whether the database said "try again" rather than "this is broken"."""
    state = getattr(error.orig, "sqlstate", None)
    return state in _LOCK_STATES or "database is locked" in str(error.orig)


@contextmanager
def writing() -> Iterator[Session]:
    """One short writing transaction for tables other than the journal; commits at the end, raises RecordBusy."""
    with _writing_connection() as connection, Session(bind=connection, expire_on_commit=False) as orm:
        yield orm
        orm.flush()


@contextmanager
def reading() -> Iterator[Connection]:
    """One reading transaction: a single moment of the database, for as long as it is open."""
    with db.engine.connect() as connection, connection.begin():
        yield connection


@contextmanager
def practice_room(practice: str) -> Iterator[Room]:
    """The one door to a practice's journal: one short transaction, its head locked; raises PracticeUnknown, RecordBusy.

    Nothing slow belongs inside: every phone of the practice waits while it is open.
    """
    with _writing_connection() as connection:
        head = connection.execute(_lock_head(connection, practice)).one_or_none()
        if head is None:
            raise PracticeUnknown(practice)
        yield Room(connection, practice, head.epoch, head.position, head.chain)


def _lock_head(connection: Connection, practice: str) -> Any:
    """SQLite holds its lock since BEGIN IMMEDIATE; PostgreSQL locks the row, and with it this practice alone."""
    query = select(Head.epoch, Head.position, Head.chain).where(Head.practice == practice)
    return query if connection.dialect.name == "sqlite" else query.with_for_update()


def found_practice(orm: Session, practice: str, name: str, created_at_ms: int) -> None:
    """Adds a practice with an empty journal, inside the caller's `writing()`."""
    orm.execute(insert(Practice).values(id=practice, name=name, created_at_ms=created_at_ms))
    orm.execute(insert(Head).values(practice=practice, epoch=str(uuid4()), position=0, chain=FIRST_CHAIN))
