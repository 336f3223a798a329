"""What makes the journal append-only in the database itself, whoever writes: its triggers on SQLite and PostgreSQL.

One way out, in the same triggers: the letter of an id that an `erased` entry names may become NULL, and nothing else.
Must never be edited once released: a change is a new migration. Anything that rebuilds the table drops them, so
`missing_triggers` is asked by a test and by whoever wants to know whether the record is whole.
"""

from __future__ import annotations

from sqlalchemy import Connection, text

KEPT_COLUMNS = (
    "practice", "position", "id", "kind", "amends", "sha", "device", "number", "box", "chain", "received_at_ms",
    "flags", "assessment",
)  # fmt: skip

_ERASED = (
    "EXISTS (SELECT 1 FROM journal AS erasure WHERE erasure.practice = OLD.practice"
    " AND erasure.kind = 'erased' AND erasure.amends = OLD.id)"
)

JOURNAL_TRIGGERS = {
    "sqlite": ("journal_no_delete", "journal_no_overwrite", "journal_no_update"),
    "postgresql": ("journal_append_only", "journal_no_truncate"),
}


def journal_trigger_statements(dialect: str) -> list[str]:
    """The statements that create the triggers, in order."""
    return _sqlite_statements() if dialect == "sqlite" else _postgresql_statements()


def _only_letter_goes(same: str) -> str:
    kept = " AND ".join(f"NEW.{column} {same} OLD.{column}" for column in KEPT_COLUMNS)
    return f"NEW.letter IS NULL AND {kept} AND {_ERASED}"


def _sqlite_statements() -> list[str]:
    """The third one: INSERT OR REPLACE deletes the old row without asking a DELETE trigger."""
    refuse = "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END"
    taken = (
        "EXISTS (SELECT 1 FROM journal AS old WHERE old.practice = NEW.practice"
        " AND (old.id = NEW.id OR old.position = NEW.position))"
        " OR EXISTS (SELECT 1 FROM journal AS old WHERE old.rowid = NEW.rowid)"
    )
    return [
        f"CREATE TRIGGER journal_no_delete BEFORE DELETE ON journal {refuse}",
        f"CREATE TRIGGER journal_no_update BEFORE UPDATE ON journal WHEN NOT ({_only_letter_goes('IS')}) {refuse}",
        f"CREATE TRIGGER journal_no_overwrite BEFORE INSERT ON journal WHEN {taken} {refuse}",
    ]


def _postgresql_statements() -> list[str]:
    return [
        "CREATE FUNCTION journal_append_only() RETURNS trigger LANGUAGE plpgsql AS $body$ BEGIN"
        f" IF TG_OP = 'UPDATE' THEN IF {_only_letter_goes('IS NOT DISTINCT FROM')} THEN RETURN NEW; END IF; END IF;"
        " RAISE EXCEPTION 'the journal is append-only'; END $body$",
        "CREATE TRIGGER journal_append_only BEFORE UPDATE OR DELETE ON journal"
        " FOR EACH ROW EXECUTE FUNCTION journal_append_only()",
        "CREATE TRIGGER journal_no_truncate BEFORE TRUNCATE ON journal"
        " FOR EACH STATEMENT EXECUTE FUNCTION journal_append_only()",
    ]


def missing_triggers(connection: Connection) -> list[str]:
    """Which of the journal's triggers the database does not hold (or holds switched off); empty when all is well."""
    dialect = connection.dialect.name
    if dialect == "sqlite":
        query = "SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'journal'"
    else:
        query = "SELECT tgname FROM pg_trigger WHERE tgrelid = to_regclass('journal') AND tgenabled IN ('O', 'A')"
    present = set(connection.execute(text(query)).scalars())
    return [name for name in JOURNAL_TRIGGERS[dialect] if name not in present]
