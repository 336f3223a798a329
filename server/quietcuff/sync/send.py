"""Gives out a practice's journal in pages, each entry with its place, its chain and the server's remarks.

Must not interpret a letter: its bytes go out as they came in.
"""

from __future__ import annotations

import json
from typing import Any

from quietcuff.record import journal
from quietcuff.record.database import reading
from quietcuff.record.entries import Filed
from quietcuff.record.errors import RecordError
from quietcuff.sync.bundle import write_bundle

PAGE_ENTRIES = 500
PAGE_RAW_BYTES = 1024 * 1024
VIEW = "all"


class CursorVoid(RecordError):
    """The reader's place is not one of this journal (it was restored): begin again at 0, and offer all anew."""

    def __init__(self, epoch: str, head: int) -> None:
        super().__init__("cursor_void", epoch=epoch, head=head)


def send_page(practice: str, epoch: str | None, position: int, now_ms: int) -> bytes:
    """The next page after a position, as a bundle; an empty one at the end.

    Without an epoch only the beginning (position 0) can be asked for. Raises PracticeUnknown, CursorVoid.
    """
    with reading() as connection:
        head = journal.head_of(connection, practice)
        begins = epoch is None and position == 0
        if not begins and (epoch != head.epoch or not 0 <= position <= head.position):
            raise CursorVoid(head.epoch, head.position)
        sizes = journal.sizes_after(connection, practice, position, PAGE_ENTRIES)
        last = _last_of_page(sizes, head.position, position)
        entries = journal.entries_between(connection, practice, position, last)
    header = {
        "practice": practice,
        "epoch": head.epoch,
        "view": VIEW,
        "head": head.position,
        "more": last < head.position,
        "server_time_ms": now_ms,
    }
    befores = [position, *(entry.position for entry in entries)]
    pairs = zip(befores, entries, strict=False)
    return write_bundle(header, ((_envelope(before, entry), entry.letter or b"") for before, entry in pairs))


def _last_of_page(sizes: list[tuple[int, int]], head: int, after: int) -> int:
    """The last position that still fits; never beyond the head that was read before (others may have filed since)."""
    last, raw_bytes = after, 0
    for position, letter_bytes in sizes:
        raw_bytes += letter_bytes
        if position > head or (raw_bytes > PAGE_RAW_BYTES and last > after):
            break
        last = position
    return last


def _envelope(before: int, entry: Filed) -> dict[str, Any]:
    envelope: dict[str, Any] = {
        "device": entry.device,
        "number": entry.number,
        "sha": entry.sha,
        "position": entry.position,
        "after": before,
        "chain": entry.chain,
        "received_at_ms": entry.received_at_ms,
    }
    if entry.box is not None:
        envelope["box"] = entry.box
    if entry.flags:
        envelope["flags"] = list(entry.flags)
    if entry.assessment is not None:
        envelope["assessment"] = json.loads(entry.assessment)
    return envelope
