"""A pull: pages that join without a gap, each entry with its place and chain, and cursors that are void."""

from __future__ import annotations

import hashlib
import json
from typing import Any

import pytest
from flask import Flask
from sqlalchemy import text

from quietcuff.contract.wire import check
from quietcuff.record.database import found_practice, writing
from quietcuff.record.errors import PracticeUnknown
from quietcuff.sync import send
from quietcuff.sync.receive import receive
from quietcuff.sync.send import CursorVoid, send_page
from tests.sync.letters import NOW_MS, Pair, Phone, answers, bundle

PRACTICE = "01890000-0000-7000-8000-000000000001"


@pytest.fixture
def filed(record: Flask) -> list[Pair]:
    """Twelve entries in the journal; the third is remarked on twice."""
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)
    phone = Phone()
    cat = phone.patient()
    odd = phone.measurement(cat["id"], made_at_ms=NOW_MS + 10**9)
    odd["assessment"] = {**odd["assessment"], "firmness": "other"}
    letters = [phone.measurement(cat["id"]), cat, odd, *[phone.measurement(cat["id"]) for _ in range(9)]]
    pairs = phone.pairs(*letters)
    _, said = answers(receive(PRACTICE, phone.device, bundle(pairs), None, NOW_MS))
    assert [one["answer"] for one in said] == ["stored"] * 12
    return pairs


def page(epoch: str | None, position: int) -> tuple[dict[str, Any], list[dict[str, Any]], list[bytes]]:
    """A page taken apart by hand: header, envelopes, letters; header and envelopes held to their wire schemas."""
    lines = send_page(PRACTICE, epoch, position, NOW_MS).split(b"\n")
    assert lines.pop() == b""
    header, envelopes = json.loads(lines[0]), [json.loads(line) for line in lines[1::2]]
    assert [check("bundle.1", header), *[check("envelope.1", one) for one in envelopes]] == [None] * (1 + len(envelopes))
    assert header["count"] == len(envelopes) == len(lines[2::2])
    return header, envelopes, lines[2::2]


def all_pages() -> list[list[dict[str, Any]]]:
    """Pulled from the beginning to the end as a phone does."""
    pages: list[list[dict[str, Any]]] = []
    epoch, position, more = None, 0, True
    while more:
        header, envelopes, _ = page(epoch, position)
        epoch, more = header["epoch"], header["more"]
        position = envelopes[-1]["position"]
        pages.append(envelopes)
    return pages


def test_letters_come_back_byte_for_byte_with_their_chain(filed: list[Pair]) -> None:
    header, envelopes, letters = page(None, 0)
    assert letters == [letter for _, letter in filed]
    assert (header["view"], header["head"], header["more"], header["practice"]) == ("all", 12, False, PRACTICE)
    chain = bytes(32)
    for place, (envelope, letter, pair) in enumerate(zip(envelopes, letters, filed, strict=True), start=1):
        chain = hashlib.sha256(chain + hashlib.sha256(letter).digest()).digest()
        assert (envelope["position"], envelope["after"], envelope["chain"]) == (place, place - 1, chain.hex())
        sent = json.loads(pair[0])
        assert {key: envelope[key] for key in sent} == sent
        assert envelope["received_at_ms"] == NOW_MS


def test_remarks_and_the_servers_result_come_along(filed: list[Pair]) -> None:
    _, envelopes, letters = page(None, 0)
    assert [envelope.get("flags") for envelope in envelopes[1:4]] == [None, ["clock_suspect", "computation_differs"], None]
    phones = json.loads(letters[2])["assessment"]
    assert phones["firmness"] == "other"
    assert envelopes[2]["assessment"] == {**phones, "firmness": envelopes[2]["assessment"]["firmness"]}
    assert envelopes[2]["assessment"] != phones


@pytest.mark.parametrize("page_entries", [1, 5, 12, 13])
def test_pages_join_without_gap(filed: list[Pair], page_entries: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(send, "PAGE_ENTRIES", page_entries)
    pages = all_pages()
    assert max(map(len, pages)) == min(page_entries, 12)
    joined = [envelope for one in pages for envelope in one]
    assert [one["position"] for one in joined] == list(range(1, 13))
    assert [one["after"] for one in joined] == list(range(12))


def test_a_page_is_cut_by_bytes_but_never_empty(filed: list[Pair], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(send, "PAGE_RAW_BYTES", 1)
    assert [len(one) for one in all_pages()] == [1] * 12
    first_two = sum(len(letter) for _, letter in filed[:2])
    monkeypatch.setattr(send, "PAGE_RAW_BYTES", first_two)
    assert len(page(None, 0)[1]) == 2
    monkeypatch.setattr(send, "PAGE_RAW_BYTES", first_two - 1)
    assert len(page(None, 0)[1]) == 1


def test_at_the_end_there_is_an_empty_page(filed: list[Pair]) -> None:
    epoch = page(None, 0)[0]["epoch"]
    header, envelopes, _ = page(epoch, 12)
    assert (envelopes, header["more"], header["head"]) == ([], False, 12)


@pytest.mark.parametrize(("other_epoch", "position"), [(False, 13), (True, 0), (True, 5), (None, 1), (False, -1)])
def test_a_cursor_of_another_journal_is_void(filed: list[Pair], other_epoch: bool | None, position: int) -> None:
    epoch = page(None, 0)[0]["epoch"]
    asked = {False: epoch, True: PRACTICE, None: None}[other_epoch]
    with pytest.raises(CursorVoid) as void:
        send_page(PRACTICE, asked, position, NOW_MS)
    assert (void.value.code, void.value.facts) == ("cursor_void", {"epoch": epoch, "head": 12})


def test_an_unknown_practice_is_unknown(record: Flask) -> None:
    with pytest.raises(PracticeUnknown):
        send_page(PRACTICE, None, 0, NOW_MS)


def test_an_erased_letter_leaves_its_place(filed: list[Pair]) -> None:
    """The chain is over hashes, so it can still be checked; the letter's line is empty."""
    letter_id = json.loads(filed[0][1])["id"]
    with writing() as orm:
        orm.execute(
            text(
                "INSERT INTO journal (practice, position, id, kind, amends, sha, letter, device, number, chain,"
                " received_at_ms, flags) VALUES (:p, 13, 'e', 'erased', :id, 'aa', NULL, 'd', 1, 'cc', 1, '')"
            ),
            {"p": PRACTICE, "id": letter_id},
        )
        orm.execute(text("UPDATE journal SET letter = NULL WHERE id = :id"), {"id": letter_id})
    _, envelopes, letters = page(None, 0)
    assert (len(envelopes), letters[0], letters[1]) == (12, b"", filed[1][1])
