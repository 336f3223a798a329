"""All that is read out of the journal, in one list: each has a table, an `apply` and its own questions.

A projection holds nothing of its own: dropped and replayed (`rebuild.py`) it is the same, row by row. `apply` is given
entries with positions and must come to the same rows in whatever order they are told.
"""

from __future__ import annotations

from sqlalchemy import Connection

from quietcuff.record import bags, measurements, patients
from quietcuff.record.entries import ToldEntries

PROJECTIONS = (patients, measurements, bags)
TABLES = tuple(projection.TABLE for projection in PROJECTIONS)


def apply_all(connection: Connection, practice: str, told: ToldEntries) -> None:
    """Tells the entries to every projection."""
    for projection in PROJECTIONS:
        projection.apply(connection, practice, told)
