"""The format of a bundle against hostile bodies: each is refused as a whole with its code, and at little cost."""

from __future__ import annotations

import time
import tracemalloc
import zlib

import pytest

from quietcuff.sync.bundle import PUSH, BundleUnreadable, Limits, inflate, read_bundle, write_bundle
from tests.sync.letters import Phone, bundle, json_line, zipped

GOOD = bundle(Phone().pairs(Phone(2).patient(), Phone(3).patient()))


def code(body: bytes, encoding: str | None = None, limits: Limits = PUSH) -> str:
    with pytest.raises(BundleUnreadable) as refused:
        read_bundle(body, encoding, limits)
    return refused.value.code


def test_lines_come_out_byte_for_byte() -> None:
    odd = '{"name": "Ä\\u00e4\\ud83d\\udc08",  "x":1.0}'.encode()
    pairs = [(b"not json", b""), (b'{"a":1}', odd)]
    for body, encoding in ((bundle(pairs), None), (zipped(bundle(pairs)), "gzip"), (bundle(pairs)[:-1], "identity")):
        opened = read_bundle(body, encoding)
        assert [(pair.envelope, pair.letter) for pair in opened.pairs] == pairs
    assert read_bundle(bundle([]), None).pairs == []


def test_what_is_written_is_read_the_same() -> None:
    body = write_bundle({"view": "all"}, [({"number": 1}, b"{}"), ({"number": 2}, '{"ä":1}'.encode())])
    opened = read_bundle(body, None)
    assert opened.header == {"bundle": 1, "count": 2, "view": "all"}
    assert [pair.letter for pair in opened.pairs] == [b"{}", '{"ä":1}'.encode()]


@pytest.mark.parametrize(
    ("body", "encoding", "expected"),
    [
        (zipped(GOOD) + zipped(GOOD), "gzip", "gzip_trailing"),
        (zipped(GOOD) + b"x", "gzip", "gzip_trailing"),
        (zipped(GOOD)[:-1], "gzip", "gzip_truncated"),
        (zipped(GOOD)[:20], "gzip", "gzip_truncated"),
        (b"", "gzip", "gzip_truncated"),
        (GOOD, "gzip", "gzip_damaged"),
        (zlib.compress(GOOD), "gzip", "gzip_damaged"),
        (zipped(GOOD)[:-8] + b"\0\0\0\0" + zipped(GOOD)[-4:], "gzip", "gzip_damaged"),
        (GOOD, "br", "encoding_unknown"),
        (zipped(zipped(GOOD)), "gzip, gzip", "encoding_unknown"),
        (zipped(GOOD), None, "header_unreadable"),
        (b"", None, "header_unreadable"),
        (b"\n", None, "header_unreadable"),
        (b"\n" * 500_000, None, "too_many_entries"),
        (GOOD + b"\n", None, "lines_missing"),
        (GOOD + b"{}\n{}\n", None, "count_differs"),
        (b"{}\n", None, "header_invalid"),
        (b"[]\n", None, "header_invalid"),
        (b'{"bundle":1,"bundle":1,"count":0}', None, "header_unreadable"),
        (b'{"bundle":1,"count":NaN}', None, "header_unreadable"),
        (b'{"bundle":1,"count":0,"build":"\xff"}', None, "header_unreadable"),
        (b'{"bundle":1,"count":0,"build":"\\ud800"}', None, "header_unreadable"),
        (b'{"bundle":1,"count":0,"build":"' + b"x" * 4_096 + b'"}', None, "header_unreadable"),
        (b'{"bundle":2,"count":0}', None, "header_invalid"),
        (bundle([], evil=1), None, "header_invalid"),
    ],
)
def test_a_body_that_cannot_be_taken_is_refused_as_a_whole(body: bytes, encoding: str | None, expected: str) -> None:
    assert code(body, encoding) == expected


def test_the_limits_themselves_are_still_good() -> None:
    pair = (b"{}", b"{}")
    assert len(read_bundle(bundle([pair] * 100), None).pairs) == 100
    assert code(bundle([pair] * 101)) == "too_many_entries"
    header = json_line({"bundle": 1, "count": 1}) + b"\n{}\n"
    whole = header + b"x" * (PUSH.raw_bytes - len(header))
    for body, encoding in ((whole, None), (zipped(whole), "gzip")):
        assert len(read_bundle(body, encoding).pairs[0].letter) == PUSH.raw_bytes - len(header)
    assert code(whole + b"x") == "bundle_too_large"
    assert code(zipped(whole + b"x"), "gzip") == "bundle_too_large"


def test_a_bomb_costs_no_more_than_the_limit() -> None:
    """200 MiB of zeroes in 200 KiB never inflate beyond the limit: under 2 MiB of memory, a few ms."""
    packer = zlib.compressobj(9, zlib.DEFLATED, 31)
    block = bytes(1024 * 1024)
    bomb = b"".join(packer.compress(block) for _ in range(200)) + packer.flush()
    assert len(bomb) < PUSH.body_bytes
    tracemalloc.start()
    began = time.process_time()
    with pytest.raises(BundleUnreadable, match="bundle_too_large"):
        inflate(bomb, PUSH.raw_bytes)
    spent_s, (_, peak_bytes) = time.process_time() - began, tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak_bytes < 2 * 1024 * 1024
    assert spent_s < 0.05
