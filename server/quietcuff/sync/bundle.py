"""The one format in which letters travel: push, pull, export, hand-over file and demo.

Lines of JSON: a header, then two lines an entry, its envelope and its letter, byte for byte; gzip allowed. Reads with
hard limits before anything is parsed. Must not look into a letter.
"""

from __future__ import annotations

import json
import zlib
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from quietcuff.contract.read_json import Unreadable, read_json
from quietcuff.contract.wire import check
from quietcuff.record.errors import RecordError

MEDIA_TYPE = "application/x-ndjson"
_GZIP = 16 + zlib.MAX_WBITS


class BundleUnreadable(RecordError):
    """The bundle as a whole cannot be taken; none of its entries was looked at. Codes are listed in `read_bundle`."""


@dataclass(frozen=True)
class Limits:
    """How large a bundle may be: as it came, once inflated, in entries, and per letter."""

    body_bytes: int
    raw_bytes: int
    entries: int
    letter_bytes: int
    header_bytes: int = 4 * 1024


PUSH = Limits(body_bytes=512 * 1024, raw_bytes=512 * 1024, entries=100, letter_bytes=32 * 1024)


@dataclass(frozen=True)
class Pair:
    """One entry as it came: two lines, unread."""

    envelope: bytes
    letter: bytes


@dataclass(frozen=True)
class Bundle:
    """A bundle opened: its header read and checked, its entries not yet."""

    header: dict[str, Any]
    pairs: list[Pair]


def read_bundle(body: bytes, content_encoding: str | None, limits: Limits = PUSH) -> Bundle:
    """Opens a bundle within limits.

    Raises BundleUnreadable with one of: `encoding_unknown`, `gzip_damaged`, `gzip_truncated`, `gzip_trailing`,
    `bundle_too_large`, `too_many_entries`, `lines_missing`, `header_unreadable`, `header_invalid`, `count_differs`.
    """
    raw = _inflated(body, content_encoding, limits)
    lines = _split(raw, limits)
    header = _header(lines[0], limits)
    if len(lines) % 2 == 0:
        raise BundleUnreadable("lines_missing")
    pairs = [Pair(lines[at], lines[at + 1]) for at in range(1, len(lines), 2)]
    if header["count"] != len(pairs):
        raise BundleUnreadable("count_differs", said=header["count"], found=len(pairs))
    return Bundle(header, pairs)


def _inflated(body: bytes, content_encoding: str | None, limits: Limits) -> bytes:
    if len(body) > limits.body_bytes:
        raise BundleUnreadable("bundle_too_large", limit_bytes=limits.body_bytes)
    encoding = (content_encoding or "identity").strip().lower()
    if encoding == "gzip":
        return inflate(body, limits.raw_bytes)
    if encoding != "identity":
        raise BundleUnreadable("encoding_unknown")
    if len(body) > limits.raw_bytes:
        raise BundleUnreadable("bundle_too_large", limit_bytes=limits.raw_bytes)
    return body


def inflate(body: bytes, limit_bytes: int) -> bytes:
    """Inflates exactly one gzip member, never more than the limit: a second one would slip past any limit."""
    inflater = zlib.decompressobj(_GZIP)
    try:
        raw = inflater.decompress(body, limit_bytes + 1)
    except zlib.error as error:
        raise BundleUnreadable("gzip_damaged") from error
    if len(raw) > limit_bytes:
        raise BundleUnreadable("bundle_too_large", limit_bytes=limit_bytes)
    if not inflater.eof:
        raise BundleUnreadable("gzip_truncated")
    if inflater.unused_data:
        raise BundleUnreadable("gzip_trailing")
    return raw


def _split(raw: bytes, limits: Limits) -> list[bytes]:
    """Counts before it cuts, so that a body of newlines makes no list of half a million lines."""
    whole = raw[:-1] if raw.endswith(b"\n") else raw
    if whole.count(b"\n") > 2 * limits.entries:
        raise BundleUnreadable("too_many_entries", limit=limits.entries)
    return whole.split(b"\n")


def _header(line: bytes, limits: Limits) -> dict[str, Any]:
    if len(line) > limits.header_bytes:
        raise BundleUnreadable("header_unreadable")
    try:
        header = read_json(line)
    except Unreadable as error:
        raise BundleUnreadable("header_unreadable", why=error.code) from error
    problem = check("bundle.1", header)
    if problem is not None:
        raise BundleUnreadable("header_invalid", path=problem.path, why=problem.why)
    return dict(header)


def as_line(document: dict[str, Any]) -> bytes:
    """A document as one line of JSON."""
    return json.dumps(document, separators=(",", ":"), ensure_ascii=False, allow_nan=False).encode() + b"\n"


def write_bundle(header: dict[str, Any], entries: Iterable[tuple[dict[str, Any], bytes]]) -> bytes:
    """Writes a bundle: the header (its `count` is set here), then envelope and letter of each entry."""
    lines = [part for envelope, letter in entries for part in (as_line(envelope), letter + b"\n")]
    return as_line({**header, "bundle": 1, "count": len(lines) // 2}) + b"".join(lines)
