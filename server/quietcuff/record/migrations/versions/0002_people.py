"""People, their phones, their sign-ins, and the tries that count towards a pause.

Revision ID: 0002
Revises: 0001
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def _text(name: str, *, null: bool = False, to: str | None = None, primary: bool = False) -> sa.Column[str]:
    links = [sa.ForeignKey(to)] if to else []
    return sa.Column(name, sa.Text(), *links, nullable=null, primary_key=primary)


def _number(name: str, *, null: bool = False) -> sa.Column[int]:
    return sa.Column(name, sa.BigInteger(), nullable=null)


def upgrade() -> None:
    """Four tables; SQLite and PostgreSQL alike."""
    op.create_table(
        "people", _text("id", primary=True), _text("practice", to="practice.id"), _text("login"), _text("name"),
        _text("role"), _text("password_hash"), _number("made_at_ms"), _number("left_at_ms", null=True),
        sa.UniqueConstraint("login", name="uq_people_login"))
    op.create_index("ix_people_practice", "people", ["practice"])
    op.create_table(
        "devices", _text("id", primary=True), _text("practice", to="practice.id"), _text("person", to="people.id"),
        _text("token_sha"), _text("earlier_token_sha", null=True), _number("made_at_ms"), _number("contact_at_ms"),
        _number("revoked_at_ms", null=True),
        sa.UniqueConstraint("token_sha", name="uq_devices_token_sha"),
        sa.UniqueConstraint("earlier_token_sha", name="uq_devices_earlier_token_sha"))
    op.create_index("ix_devices_practice", "devices", ["practice"])
    op.create_table(
        "sign_ins", _text("token_sha", primary=True), _text("person", to="people.id"), _text("device", to="devices.id"),
        _number("made_at_ms"), _number("used_at_ms"))
    op.create_index("ix_sign_ins_person", "sign_ins", ["person"])
    op.create_index("ix_sign_ins_device", "sign_ins", ["device"])
    op.create_table(
        "sign_in_tries", _text("key_sha", primary=True), _number("tries"), _number("began_at_ms"))
    op.create_index("ix_sign_in_tries_began_at_ms", "sign_in_tries", ["began_at_ms"])


def downgrade() -> None:
    """Removes the four tables, in the order of their links."""
    for table in ("sign_in_tries", "sign_ins", "devices", "people"):
        op.drop_table(table)
