"""Bags: what each team carries to measure with, read out of the journal.

Revision ID: 0003
Revises: 0002
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """One table, alike in SQLite and PostgreSQL. Empty at first: no journal held a bag before this revision."""
    op.create_table(
        "bags",
        *(sa.Column(name, sa.Text(), nullable=False) for name in ("practice", "bag")),
        *(sa.Column(name, sa.BigInteger(), nullable=False) for name in ("position", "amended")),
        *(sa.Column(name, sa.Text(), nullable=False) for name in ("author", "name", "body")),
        sa.PrimaryKeyConstraint("practice", "bag", name="pk_bags"),
        sa.ForeignKeyConstraint(["practice"], ["practice.id"], name="fk_bags_practice"),
    )


def downgrade() -> None:
    """Removes the table; a journal that holds bags fills it again by `rebuild`."""
    op.drop_table("bags")
