"""Writes rows of a projection over older ones: the one place where the two databases' upsert differs.

Must not be used on the journal, which has no second version of anything.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from sqlalchemy import Connection, Table, tuple_
from sqlalchemy.dialects import postgresql, sqlite


def upsert_latest(connection: Connection, table: Table, rows: Sequence[dict[str, Any]]) -> None:
    """Writes rows by primary key; of two for the same key the amendment stands over the original, else the later one.

    That order is the journal's own and not a clock's, so every reader of the journal comes to the same row.
    """
    if not rows:
        return
    dialect = sqlite if connection.dialect.name == "sqlite" else postgresql
    statement = dialect.insert(table)
    new = statement.excluded
    keys = [column.name for column in table.primary_key.columns]
    connection.execute(
        statement.on_conflict_do_update(
            index_elements=keys,
            set_={column.name: new[column.name] for column in table.columns if column.name not in keys},
            where=tuple_(new.amended, new.position) > tuple_(table.c.amended, table.c.position),
        ),
        rows,
    )
