"""Entries that were offered and not filed: held (a later build or a person decides) and refused, with the reason.

Kept so that nothing offered disappears unseen. Must not grow without end: bytes and rows are limited per device.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, ForeignKey, delete, func, insert, select, update
from sqlalchemy.orm import Mapped, mapped_column

from quietcuff.record.database import Room, db

KEPT_BYTES_PER_DEVICE = 1024 * 1024
KEPT_ROWS_PER_DEVICE = 2_000


class TrayRow(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """One offered entry, by its bytes; `letter` is None when the device's share of the tray was used up."""

    __tablename__ = "tray"
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), primary_key=True)
    device: Mapped[str] = mapped_column(primary_key=True)
    sha: Mapped[str] = mapped_column(primary_key=True)
    id: Mapped[str | None]
    kind: Mapped[str | None]
    number: Mapped[int | None]
    box: Mapped[str | None]
    state: Mapped[str]
    code: Mapped[str]
    path: Mapped[str]
    letter: Mapped[bytes | None]
    letter_bytes: Mapped[int]
    first_received_at_ms: Mapped[int]
    received_at_ms: Mapped[int]


@dataclass(frozen=True)
class Aside:
    """An entry that is not filed: `state` held or refused, the code, and where in the letter (JSON Pointer)."""

    state: str
    code: str
    path: str
    sha: str
    letter: bytes
    id: str | None = None
    kind: str | None = None
    number: int | None = None
    box: str | None = None


def lay_in_tray(room: Room, device: str, asides: Sequence[Aside], received_at_ms: int) -> None:
    """Keeps the entries; one already there gets the newest reason and keeps its bytes."""
    asides = list({aside.sha: aside for aside in asides}.values())
    if not asides:
        return
    here = (TrayRow.practice == room.practice, TrayRow.device == device)
    query = select(TrayRow.sha).where(*here, TrayRow.sha.in_([aside.sha for aside in asides]))
    present = set(room.connection.execute(query).scalars())
    for aside in asides:
        if aside.sha in present:
            reason = {"state": aside.state, "code": aside.code, "path": aside.path, "received_at_ms": received_at_ms}
            room.connection.execute(update(TrayRow).where(*here, TrayRow.sha == aside.sha).values(**reason))
    _add(room, device, [aside for aside in asides if aside.sha not in present], received_at_ms)


def _add(room: Room, device: str, asides: Sequence[Aside], received_at_ms: int) -> None:
    rows_used, bytes_used = _used(room.connection, room.practice, device)
    rows = []
    for aside in asides[: max(0, KEPT_ROWS_PER_DEVICE - rows_used)]:
        fits = bytes_used + len(aside.letter) <= KEPT_BYTES_PER_DEVICE
        bytes_used += len(aside.letter) if fits else 0
        rows.append(
            {
                **vars(aside),
                "practice": room.practice,
                "device": device,
                "letter": aside.letter if fits else None,
                "letter_bytes": len(aside.letter),
                "first_received_at_ms": received_at_ms,
                "received_at_ms": received_at_ms,
            }
        )
    if rows:
        room.connection.execute(insert(TrayRow), rows)


def _used(connection: Connection, practice: str, device: str) -> tuple[int, int]:
    query = select(func.count(), func.coalesce(func.sum(func.length(TrayRow.letter)), 0))
    row = connection.execute(query.where(TrayRow.practice == practice, TrayRow.device == device)).one()
    return int(row[0]), int(row[1])


def take_from_tray(room: Room, shas: Sequence[str]) -> None:
    """Removes entries that have been filed since, whoever had offered them."""
    if shas:
        room.connection.execute(delete(TrayRow).where(TrayRow.practice == room.practice, TrayRow.sha.in_(shas)))
