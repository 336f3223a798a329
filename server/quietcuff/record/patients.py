"""The animals of a practice: who each is, as the latest of its letters of kind `patient` says.

A patient's id is the id of its first letter. Must not merge bodies field by field: an amendment carries all of it.
"""

from __future__ import annotations

from typing import Any

from sqlalchemy import Connection, ForeignKey, select
from sqlalchemy.orm import Mapped, mapped_column

from quietcuff.record.database import db
from quietcuff.record.entries import Document, Filed, ToldEntries, without_nul
from quietcuff.record.upsert import upsert_latest


class PatientRow(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """One animal; `position` is that of the letter shown, `amended` 1 when that letter is an amendment."""

    __tablename__ = "patients"
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), primary_key=True)
    patient: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    amended: Mapped[int]
    author: Mapped[str]
    species: Mapped[str]
    name: Mapped[str]
    mark: Mapped[str | None]
    born_on_day: Mapped[int | None]
    sex: Mapped[str | None]
    breed: Mapped[str | None]


TABLE = PatientRow.__table__
_BODY_KEYS = ("species", "name", "mark", "born_on_day", "sex", "breed")


def apply(connection: Connection, practice: str, told: ToldEntries) -> None:
    """Takes up what letters of kind `patient` say; leaves all others alone."""
    rows = [_row(practice, entry, letter) for entry, letter in told if entry.kind == "patient"]
    upsert_latest(connection, TABLE, rows)


def _row(practice: str, entry: Filed, letter: Document) -> dict[str, Any]:
    amends = letter.get("amends")
    return {
        "practice": practice,
        "patient": amends or entry.id,
        "position": entry.position,
        "amended": int(amends is not None),
        "author": letter["author"],
        **{key: _as_held(letter["body"].get(key)) for key in _BODY_KEYS},
    }


def _as_held(value: Any) -> Any:
    return without_nul(value) if isinstance(value, str) else value


def all_patients(connection: Connection, practice: str) -> list[dict[str, Any]]:
    """Every animal of the practice, by name and then by id."""
    query = select(TABLE).where(TABLE.c.practice == practice).order_by(TABLE.c.name, TABLE.c.patient)
    return [dict(row) for row in connection.execute(query).mappings()]
