"""The record: practice, head, journal with its triggers, tray, patients, measurements.

Revision: 0001, the first. Written by hand. No way back: a journal is not dropped by a command.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

from quietcuff.record.triggers import journal_trigger_statements

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def _text(name: str, needed: bool = True) -> sa.Column[str]:
    return sa.Column(name, sa.Text(), nullable=not needed)


def _whole(name: str, needed: bool = True) -> sa.Column[int]:
    return sa.Column(name, sa.BigInteger(), nullable=not needed)


def upgrade() -> None:
    _create_practice_and_head()
    _create_journal()
    _create_tray()
    _create_projections()


def _create_practice_and_head() -> None:
    op.create_table(
        "practice",
        _text("id"),
        _text("name"),
        _whole("created_at_ms"),
        sa.PrimaryKeyConstraint("id", name="pk_practice"),
    )
    op.create_table(
        "head",
        _text("practice"),
        _text("epoch"),
        _whole("position"),
        _text("chain"),
        sa.PrimaryKeyConstraint("practice", name="pk_head"),
        sa.ForeignKeyConstraint(["practice"], ["practice.id"], name="fk_head_practice"),
    )


def _create_journal() -> None:
    op.create_table(
        "journal",
        _text("practice"),
        _whole("position"),
        _text("id"),
        _text("kind"),
        _text("amends", needed=False),
        _text("sha"),
        sa.Column("letter", sa.LargeBinary(), nullable=True),
        _text("device"),
        _whole("number"),
        _text("box", needed=False),
        _text("chain"),
        _whole("received_at_ms"),
        _text("flags"),
        _text("assessment", needed=False),
        sa.PrimaryKeyConstraint("practice", "id", name="pk_journal"),
        sa.UniqueConstraint("practice", "position", name="uq_journal_practice_position"),
        sa.CheckConstraint("position >= 1", name="ck_journal_position_from_1"),
        sa.ForeignKeyConstraint(["practice"], ["head.practice"], name="fk_journal_practice"),
    )
    for statement in journal_trigger_statements(op.get_bind().dialect.name):
        op.execute(sa.text(statement))


def _create_tray() -> None:
    op.create_table(
        "tray",
        _text("practice"),
        _text("device"),
        _text("sha"),
        _text("id", needed=False),
        _text("kind", needed=False),
        _whole("number", needed=False),
        _text("box", needed=False),
        _text("state"),
        _text("code"),
        _text("path"),
        sa.Column("letter", sa.LargeBinary(), nullable=True),
        _whole("letter_bytes"),
        _whole("first_received_at_ms"),
        _whole("received_at_ms"),
        sa.PrimaryKeyConstraint("practice", "device", "sha", name="pk_tray"),
        sa.ForeignKeyConstraint(["practice"], ["practice.id"], name="fk_tray_practice"),
    )


def _create_projections() -> None:
    op.create_table(
        "patients",
        _text("practice"),
        _text("patient"),
        _whole("position"),
        _whole("amended"),
        _text("author"),
        _text("species"),
        _text("name"),
        _text("mark", needed=False),
        _whole("born_on_day", needed=False),
        _text("sex", needed=False),
        _text("breed", needed=False),
        sa.PrimaryKeyConstraint("practice", "patient", name="pk_patients"),
        sa.ForeignKeyConstraint(["practice"], ["practice.id"], name="fk_patients_practice"),
    )
    op.create_table(
        "measurements",
        _text("practice"),
        _text("measurement"),
        _whole("position"),
        _whole("amended"),
        _text("author"),
        _text("patient"),
        _text("species"),
        _whole("made_at_ms"),
        _whole("started_at_ms", needed=False),
        _text("rules"),
        _text("phone_assessment", needed=False),
        _text("server_assessment"),
        _whole("differs"),
        _text("category", needed=False),
        sa.PrimaryKeyConstraint("practice", "measurement", name="pk_measurements"),
        sa.ForeignKeyConstraint(["practice"], ["practice.id"], name="fk_measurements_practice"),
    )
    op.create_index("ix_measurements_practice_patient", "measurements", ["practice", "patient"])
