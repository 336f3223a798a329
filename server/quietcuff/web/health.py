"""Is the process alive, and could it file a record now? For whoever watches the server; tells nothing of a record."""

from __future__ import annotations

from flask import Blueprint, Response, jsonify
from sqlalchemy import insert
from sqlalchemy.exc import SQLAlchemyError

from quietcuff.record.database import is_at_newest, reading, writing
from quietcuff.record.errors import RecordBusy
from quietcuff.record.people import SignInTries
from quietcuff.record.triggers import missing_triggers
from quietcuff.web.problems import Refused

routes = Blueprint("health", __name__)


class _Undo(Exception):
    """Ends a writing transaction without keeping it."""


@routes.get("/livez")
def livez() -> Response:
    """The process answers; looks at nothing else, so that a slow database does not get it killed."""
    return jsonify(live=True)


@routes.get("/readyz")
def readyz() -> Response:
    """The tables are at the newest migration, the journal is guarded and a write goes through (and is undone).

    503 otherwise, with `migration_needed`, `journal_unguarded` or `database_unready`.
    """
    try:
        with reading() as connection:
            if not is_at_newest(connection):
                raise Refused(503, "migration_needed")
            if missing_triggers(connection):
                raise Refused(503, "journal_unguarded")
        _try_to_write()
    except (SQLAlchemyError, RecordBusy) as error:
        raise Refused(503, "database_unready") from error
    return jsonify(ready=True)


def _try_to_write() -> None:
    try:
        with writing() as orm:
            orm.execute(insert(SignInTries).values(key_sha="readyz", tries=0, began_at_ms=0))
            raise _Undo
    except _Undo:
        return
