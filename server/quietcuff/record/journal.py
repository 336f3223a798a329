"""The journal of a practice: its table, and the only function that writes it.

Append-only: the database itself refuses to change or delete a row (`triggers.py`), and no migration may alter the
table. Every entry is filed together with what is read out of it, in the transaction of `practice_room`.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import CheckConstraint, Connection, ForeignKey, UniqueConstraint, func, insert, select, update
from sqlalchemy.orm import Mapped, mapped_column

from quietcuff.contract.read_json import read_json
from quietcuff.record import projections
from quietcuff.record.database import Head, Room, db
from quietcuff.record.entries import Filed, NewEntry
from quietcuff.record.errors import PracticeUnknown


class JournalRow(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """One entry. `flags` are words with a space between; `amends` repeats the letter's, for the triggers to see."""

    __tablename__ = "journal"
    __table_args__ = (
        UniqueConstraint("practice", "position"),
        CheckConstraint("position >= 1", name="position_from_1"),
    )
    practice: Mapped[str] = mapped_column(ForeignKey("head.practice"), primary_key=True)
    position: Mapped[int]
    id: Mapped[str] = mapped_column(primary_key=True)
    kind: Mapped[str]
    amends: Mapped[str | None]
    sha: Mapped[str]
    letter: Mapped[bytes | None]
    device: Mapped[str]
    number: Mapped[int]
    box: Mapped[str | None]
    chain: Mapped[str]
    received_at_ms: Mapped[int]
    flags: Mapped[str]
    assessment: Mapped[str | None]


_COLUMNS = [column for column in JournalRow.__table__.columns if column.name != "practice"]


@dataclass(frozen=True)
class Known:
    """What the journal already says about an id."""

    sha: str
    position: int
    assessment: str | None


@dataclass(frozen=True)
class HeadNow:
    """Where a practice's journal ended when it was looked at."""

    epoch: str
    position: int
    chain: str


def next_chain(chain: str, sha: str) -> str:
    """SHA-256 over the previous chain's 32 bytes and the letter's 32 bytes of SHA-256; hex in, hex out."""
    return hashlib.sha256(bytes.fromhex(chain) + bytes.fromhex(sha)).hexdigest()


def file_entries(room: Room, new: Sequence[NewEntry], received_at_ms: int) -> list[Filed]:
    """Files entries at the next positions, in the order given, with all that is read out of them.

    The ids must not be in the journal yet (`known_ids`): the database refuses the whole transaction otherwise.
    """
    if not new:
        return []
    filed = list(_at_next_positions(room, new, received_at_ms))
    room.connection.execute(insert(JournalRow), [_as_row(room.practice, entry) for entry in filed])
    told = [(entry, one.document) for entry, one in zip(filed, new, strict=True)]
    projections.apply_all(room.connection, room.practice, told)
    _move_head(room)
    return filed


def _at_next_positions(room: Room, new: Iterable[NewEntry], received_at_ms: int) -> Iterator[Filed]:
    for one in new:
        room.position += 1
        room.chain = next_chain(room.chain, one.sha)
        yield Filed(
            position=room.position,
            id=one.id,
            kind=one.kind,
            amends=one.amends,
            sha=one.sha,
            letter=one.letter,
            device=one.device,
            number=one.number,
            box=one.box,
            chain=room.chain,
            received_at_ms=received_at_ms,
            flags=one.flags,
            assessment=one.assessment,
        )


def _as_row(practice: str, entry: Filed) -> dict[str, Any]:
    return {**vars(entry), "practice": practice, "flags": " ".join(entry.flags)}


def _move_head(room: Room) -> None:
    moved = update(Head).where(Head.practice == room.practice).values(position=room.position, chain=room.chain)
    room.connection.execute(moved)


def known_ids(room: Room, ids: Sequence[str]) -> dict[str, Known]:
    """Those of the ids that the practice's journal already holds; of other practices nothing can be learnt."""
    query = select(JournalRow.id, JournalRow.sha, JournalRow.position, JournalRow.assessment).where(
        JournalRow.practice == room.practice, JournalRow.id.in_(ids)
    )
    return {row.id: Known(row.sha, row.position, row.assessment) for row in room.connection.execute(query)}


def head_of(connection: Connection, practice: str) -> HeadNow:
    """Where the journal ends now; raises PracticeUnknown."""
    query = select(Head.epoch, Head.position, Head.chain).where(Head.practice == practice)
    head = connection.execute(query).one_or_none()
    if head is None:
        raise PracticeUnknown(practice)
    return HeadNow(head.epoch, head.position, head.chain)


def sizes_after(connection: Connection, practice: str, after: int, limit: int) -> list[tuple[int, int]]:
    """The next positions after one, each with its letter's length in bytes (0 when erased)."""
    length = func.coalesce(func.length(JournalRow.letter), 0)
    query = select(JournalRow.position, length).where(JournalRow.practice == practice, JournalRow.position > after)
    rows = connection.execute(query.order_by(JournalRow.position).limit(limit))
    return [(position, letter_bytes) for position, letter_bytes in rows]


def entries_between(connection: Connection, practice: str, after: int, last: int) -> list[Filed]:
    """The entries after one position up to another, the latter included, in order."""
    query = select(*_COLUMNS).where(
        JournalRow.practice == practice, JournalRow.position > after, JournalRow.position <= last
    )
    rows = connection.execute(query.order_by(JournalRow.position)).mappings()
    return [Filed(**{**row, "flags": tuple(row["flags"].split())}) for row in rows]


def letters_read(entries: Iterable[Filed]) -> list[tuple[Filed, dict[str, Any]]]:
    """The entries with their letters read, for a replay; erased ones fall out, their facts are gone.

    Read as they were when they were filed: to another reader 140.0 would not be 140.
    """
    return [(entry, read_json(entry.letter)) for entry in entries if entry.letter is not None]
