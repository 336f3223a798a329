"""The measurements of a practice: the phone's assessment and the server's always beside it.

A measurement whose patient is not known yet is filed all the same and is *dangling*; it stops being so by itself when
the patient's letter arrives, because that is asked anew each time and stored nowhere. Must not compute anything.
"""

from __future__ import annotations

import json
from typing import Any

from sqlalchemy import Connection, ForeignKey, Index, Select, and_, select
from sqlalchemy.orm import Mapped, mapped_column

from quietcuff.record.database import db
from quietcuff.record.entries import Document, Filed, ToldEntries, as_text
from quietcuff.record.patients import TABLE as PATIENTS
from quietcuff.record.upsert import upsert_latest


class MeasurementRow(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """One measurement, under the id of its first letter; `position` is that of the letter shown.

    Assessments are JSON text. `differs` is 1 when the phone came to another result; the server's stands.
    """

    __tablename__ = "measurements"
    __table_args__ = (Index(None, "practice", "patient"),)
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), primary_key=True)
    measurement: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    amended: Mapped[int]
    author: Mapped[str]
    patient: Mapped[str]
    species: Mapped[str]
    made_at_ms: Mapped[int]
    started_at_ms: Mapped[int | None]
    rules: Mapped[str]
    phone_assessment: Mapped[str | None]
    server_assessment: Mapped[str]
    differs: Mapped[int]
    category: Mapped[str | None]


TABLE = MeasurementRow.__table__


def apply(connection: Connection, practice: str, told: ToldEntries) -> None:
    """Takes up what letters of kind `measurement` say; leaves all others alone."""
    rows = [_row(practice, entry, letter) for entry, letter in told if entry.kind == "measurement"]
    upsert_latest(connection, TABLE, rows)


def _row(practice: str, entry: Filed, letter: Document) -> dict[str, Any]:
    amends, body, phones = letter.get("amends"), letter["body"], letter.get("assessment")
    servers = phones if entry.assessment is None else json.loads(entry.assessment)
    phones_text = None if phones is None else as_text(phones)
    return {
        "practice": practice,
        "measurement": amends or entry.id,
        "position": entry.position,
        "amended": int(amends is not None),
        "author": letter["author"],
        "patient": body["patient"],
        "species": body["species"],
        "made_at_ms": letter["made_at_ms"],
        "started_at_ms": body.get("started_at_ms"),
        "rules": servers["rules"],
        "phone_assessment": phones_text,
        "server_assessment": phones_text if entry.assessment is None else entry.assessment,
        "differs": int(entry.assessment is not None),
        "category": servers.get("category"),
    }


def _with_dangling(practice: str) -> Select[Any]:
    known = and_(PATIENTS.c.practice == TABLE.c.practice, PATIENTS.c.patient == TABLE.c.patient)
    joined = TABLE.outerjoin(PATIENTS, known)
    query = select(TABLE, PATIENTS.c.patient.is_(None).label("dangling")).select_from(joined)
    return query.where(TABLE.c.practice == practice).order_by(TABLE.c.made_at_ms, TABLE.c.measurement)


def _read(connection: Connection, query: Select[Any]) -> list[dict[str, Any]]:
    return [{**row, "dangling": bool(row["dangling"])} for row in connection.execute(query).mappings()]


def measurements_of(connection: Connection, practice: str, patient: str) -> list[dict[str, Any]]:
    """One animal's measurements, in the order they were made by their phones' clocks."""
    return _read(connection, _with_dangling(practice).where(TABLE.c.patient == patient))


def dangling_measurements(connection: Connection, practice: str) -> list[dict[str, Any]]:
    """Measurements whose patient's letter has not arrived."""
    return _read(connection, _with_dangling(practice).where(PATIENTS.c.patient.is_(None)))
