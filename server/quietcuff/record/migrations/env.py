"""Runs the migrations inside the application, in one writing transaction each, on both databases.

Must not alter the journal: a batch change on SQLite copies the table and silently drops its triggers.
"""

from __future__ import annotations

from alembic import context
from flask import current_app

from quietcuff.record.tables import METADATA


def run() -> None:
    """Runs online only: a script for later would not know what the database holds."""
    database = current_app.extensions["migrate"].db
    engine = database.engine.execution_options(quietcuff_writing=True)
    with engine.connect() as connection:
        context.configure(
            connection=connection,
            target_metadata=METADATA,
            transactional_ddl=True,
            transaction_per_migration=True,
        )
        with context.begin_transaction():
            context.run_migrations()


run()
