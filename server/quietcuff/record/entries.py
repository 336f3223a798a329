"""What an entry is, before and after it is filed, and how it travels between the rooms of the record.

Plain values only: no table and no database, so that projections and the journal need not know each other.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

Document = dict[str, Any]


@dataclass(frozen=True)
class NewEntry:
    """A letter found good, with what its envelope and the server say about it; not yet in the journal.

    `assessment` is the server's own as text, and only where it differs from the one in the letter.
    `document` is the letter read; its bytes alone are what counts and what is passed on.
    """

    id: str
    kind: str
    sha: str
    letter: bytes
    device: str
    number: int
    document: Document
    amends: str | None = None
    box: str | None = None
    flags: tuple[str, ...] = ()
    assessment: str | None = None


@dataclass(frozen=True)
class Filed:
    """One entry of the journal. `letter` is None when it was erased."""

    position: int
    id: str
    kind: str
    amends: str | None
    sha: str
    letter: bytes | None
    device: str
    number: int
    box: str | None
    chain: str
    received_at_ms: int
    flags: tuple[str, ...]
    assessment: str | None


# Made once: it is used four times a measurement.
_AS_TEXT = json.JSONEncoder(sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)

# What a projection is given: an entry, and its letter read.
ToldEntries = Sequence[tuple[Filed, Document]]


def as_text(document: Any) -> str:
    """A document as text, keys in order: two documents are the same exactly when their texts are (1 is not true)."""
    return _AS_TEXT.encode(document)


def without_nul(text: str) -> str:
    """Text as both databases can hold it: PostgreSQL refuses U+0000, and one such name would block a whole push.

    Whatever comes from outside and reaches a column of text, or a question about one, goes through here.
    """
    return text.replace("\x00", "\ufffd")
