"""The bags of a practice, each with its latest whole body, read out of letters of kind `bag`.

A bag's id is the id of its first letter. Must not judge what lies in it, nor merge one wording with another.
"""

from __future__ import annotations

import json
from typing import Any

from sqlalchemy import Connection, ForeignKey, select
from sqlalchemy.orm import Mapped, mapped_column

from quietcuff.record.database import db
from quietcuff.record.entries import Document, Filed, ToldEntries, as_text, without_nul
from quietcuff.record.upsert import upsert_latest


class BagRow(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """One bag; `position` is that of the letter shown, `amended` 1 when that letter is an amendment.

    `body` is the whole body as JSON text: what lies in a bag is only ever asked for together.
    """

    __tablename__ = "bags"
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), primary_key=True)
    bag: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    amended: Mapped[int]
    author: Mapped[str]
    name: Mapped[str]
    body: Mapped[str]


TABLE = BagRow.__table__


def apply(connection: Connection, practice: str, told: ToldEntries) -> None:
    """Takes up what letters of kind `bag` say; leaves all others alone."""
    rows = [_row(practice, entry, letter) for entry, letter in told if entry.kind == "bag"]
    upsert_latest(connection, TABLE, rows)


def _row(practice: str, entry: Filed, letter: Document) -> dict[str, Any]:
    amends = letter.get("amends")
    return {
        "practice": practice,
        "bag": amends or entry.id,
        "position": entry.position,
        "amended": int(amends is not None),
        "author": letter["author"],
        "name": without_nul(letter["body"]["name"]),
        "body": as_text(letter["body"]),
    }


def all_bags(connection: Connection, practice: str) -> list[dict[str, Any]]:
    """Every bag of the practice, by name and then by id; `body` as its letter states it."""
    query = select(TABLE).where(TABLE.c.practice == practice).order_by(TABLE.c.name, TABLE.c.bag)
    return [{**row, "body": json.loads(row["body"])} for row in connection.execute(query).mappings()]
