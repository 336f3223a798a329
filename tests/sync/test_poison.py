"""Bad entries among good ones: each is answered by its own code and kept aside, and none keeps another out."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest
from flask import Flask
from sqlalchemy import text

from quietcuff.contract.wire import check
from quietcuff.record import tray
from quietcuff.record.database import found_practice, reading, writing
from quietcuff.sync import judge as judging
from quietcuff.sync.bundle import PUSH, BundleUnreadable, Pair
from quietcuff.sync.receive import receive
from tests.sync.letters import NOW_MS, Letter, Phone, answers, bundle, json_line

PRACTICE = "01890000-0000-7000-8000-000000000001"


@pytest.fixture
def practice(record: Flask) -> None:
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)


def push(phone: Phone, pairs: list[tuple[bytes, bytes]], **header: Any) -> list[dict[str, Any]]:
    _, said = answers(receive(PRACTICE, phone.device, bundle(pairs, **header), None, NOW_MS))
    assert [check("answer.1", one) for one in said] == [None] * len(pairs)
    return said


def in_tray() -> list[Any]:
    with reading() as connection:
        return list(connection.execute(text("SELECT * FROM tray ORDER BY first_received_at_ms")).mappings())


def measured(phone: Phone, **changes: Any) -> Letter:
    letter = phone.measurement(phone.uuid())
    return {**letter, **{key: value(letter[key]) if callable(value) else value for key, value in changes.items()}}


def without(*keys: str) -> Callable[[dict[str, Any]], dict[str, Any]]:
    return lambda document: {key: value for key, value in document.items() if key not in keys}


def twice_in_readings(body: dict[str, Any]) -> dict[str, Any]:
    body["sets"][0]["readings"][1]["id"] = "r1"
    return body


def letter_of_exactly(phone: Phone, size_bytes: int) -> bytes:
    """A good letter, made longer with spaces, which JSON allows between its parts."""
    line = json_line(phone.patient())
    return line[:-1] + b" " * (size_bytes - len(line)) + b"}"


def deep(depth: int) -> str:
    return "[" * depth + "]" * depth


POISON: dict[str, tuple[Callable[[Phone], tuple[bytes, bytes]], str, str, str]] = {
    "no JSON": (lambda p: p.pair(b"{"), "refused", "unparsable", ""),
    "an empty line": (lambda p: p.pair(b""), "refused", "unparsable", ""),
    "invalid UTF-8": (lambda p: p.pair(b'{"id":"\xff"}'), "refused", "unparsable", ""),
    "NaN": (lambda p: p.pair(b'{"id":NaN}'), "refused", "unparsable", ""),
    "a number beyond every limit": (lambda p: p.pair(b'{"id":1e999}'), "refused", "unparsable", ""),
    "a key twice": (lambda p: p.pair(b'{"id":"a","id":"a"}'), "refused", "unparsable", ""),
    "half a surrogate pair": (lambda p: p.pair(b'{"id":"\\ud800"}'), "refused", "unparsable", ""),
    "17 deep": (lambda p: p.pair(f'{{"id":{deep(16)}}}'.encode()), "refused", "unparsable", ""),
    "10,000 deep": (lambda p: p.pair(deep(10_000).encode()), "refused", "unparsable", ""),
    "a list": (lambda p: p.pair(b"[]"), "refused", "unparsable", ""),
    "no key at all": (lambda p: p.pair(b"{}"), "refused", "schema_invalid", "/id"),
    "32 KiB and 1": (lambda p: p.pair(letter_of_exactly(p, PUSH.letter_bytes + 1)), "refused", "too_large", ""),
    "another sha": (lambda p: p.pair(p.patient(), sha="0" * 64), "refused", "sha_differs", ""),
    "an envelope of no JSON": (lambda p: (b"{", json_line(p.patient())), "refused", "envelope_unparsable", ""),
    "an envelope with a key more": (lambda p: p.pair(p.patient(), x=1), "refused", "envelope_invalid", "/x"),
    "a sealed letter": (lambda p: p.pair(p.patient(), box="sealed.1"), "held", "box_unknown", ""),
    "a box with U+0000": (lambda p: p.pair(p.patient(), box="sealed\0"), "held", "box_unknown", ""),
    "a position of its own": (lambda p: p.pair(p.patient(position=7)), "refused", "schema_invalid", "/position"),
    "an unknown kind": (lambda p: p.pair(p.letter("owner", {})), "refused", "kind_unknown", "/kind"),
    "an unknown schema": (lambda p: p.pair(p.patient(schema=2)), "held", "schema_unknown", "/schema"),
    "unknown rules": (lambda p: p.pair(measured(p, rules="v2")), "held", "rules_unknown", "/rules"),
    "rules that are a path": (lambda p: p.pair(measured(p, rules="v1/../v1")), "held", "rules_unknown", "/rules"),
    "rules with a nought": (lambda p: p.pair(measured(p, rules="v1\0")), "held", "rules_unknown", "/rules"),
    "an unknown species": (lambda p: p.pair(p.patient(species="horse")), "refused", "schema_invalid", "/body/species"),
    "no patient": (lambda p: p.pair(measured(p, body=without("patient"))), "refused", "patient_missing", "/body/patient"),
    "a reading's id twice": (
        lambda p: p.pair(measured(p, body=twice_in_readings)), "refused", "schema_invalid", "/body/sets/0/readings/1/id",
    ),
    "a key with U+0000": (lambda p: p.pair(p.patient(**{"a\0": 1})), "refused", "schema_invalid", "/a\ufffd"),
}  # fmt: skip


@pytest.mark.parametrize("name", POISON)
def test_a_bad_entry_is_judged_by_its_code_and_path(name: str) -> None:
    make, state, code, path = POISON[name]
    judged = judging.judge(Pair(*make(Phone())), NOW_MS)
    assert isinstance(judged, tray.Aside)
    assert (judged.state, judged.code, judged.path) == (state, code, path)


def test_each_bad_entry_is_kept_and_the_others_are_stored(practice: None) -> None:
    """Every kind of bad entry once, a good one before and after each: n good at dense positions, k in the tray."""
    phone = Phone()
    made = [phone.pair(phone.patient())]
    for make, *_ in POISON.values():
        made += [make(phone), phone.pair(phone.measurement(phone.uuid()))]
    said = push(phone, made)
    assert [(one["answer"], one["position"]) for one in said[0::2]] == [("stored", n + 1) for n in range(len(said[0::2]))]
    expected = [(state, code, path) for _, state, code, path in POISON.values()]
    assert [(one["answer"], one["code"], one["path"]) for one in said[1::2]] == expected
    kept = {bytes(row["letter"]): (row["state"], row["code"], row["path"]) for row in in_tray()}
    assert kept == dict(zip((letter for _, letter in made[1::2]), expected, strict=True))


def test_32_kib_exactly_is_stored(practice: None) -> None:
    phone = Phone()
    assert push(phone, [phone.pair(letter_of_exactly(phone, PUSH.letter_bytes))])[0]["answer"] == "stored"


def test_a_name_with_a_nought_is_stored_on_both_databases_alike(practice: None) -> None:
    """PostgreSQL's text cannot hold U+0000: unguarded, one such name would block its whole push for ever."""
    phone = Phone()
    said = push(phone, phone.pairs(phone.patient("a\0b"), phone.patient("Bo")))
    assert [one["answer"] for one in said] == ["stored", "stored"]
    with reading() as connection:
        names = connection.execute(text("SELECT name FROM patients ORDER BY position")).scalars().all()
    assert names == ["a\ufffdb", "Bo"]


def test_a_bug_in_the_rules_holds_one_letter_and_no_other(practice: None, monkeypatch: pytest.MonkeyPatch) -> None:
    phone = Phone()
    pairs = phone.pairs(phone.patient(), phone.measurement(phone.uuid()), phone.patient("Bo"))

    def broken(measurement: Any, rules: Any) -> Any:
        raise ZeroDivisionError

    with monkeypatch.context() as patch:
        patch.setattr(judging, "assess", broken)
        said = push(phone, pairs)
    assert [one["answer"] for one in said] == ["stored", "held", "stored"]
    assert said[1]["code"] == "judging_failed"
    said = push(phone, pairs)  # a better build later: it leaves the tray for the journal
    assert [(one["answer"], one["position"]) for one in said] == [("duplicate", 1), ("stored", 3), ("duplicate", 2)]
    assert in_tray() == []


def test_offering_a_bad_one_again_keeps_one_row_with_the_first_time(practice: None) -> None:
    phone = Phone()
    pair = phone.pair(phone.patient(schema=2))
    push(phone, [pair])
    _, said = answers(receive(PRACTICE, phone.device, bundle([pair, pair]), None, NOW_MS + 5))
    assert [one["answer"] for one in said] == ["held", "held"]
    [kept] = in_tray()
    assert (kept["first_received_at_ms"], kept["received_at_ms"]) == (NOW_MS, NOW_MS + 5)


def test_a_letter_held_from_two_phones_is_kept_for_each_until_it_is_filed(practice: None) -> None:
    """Each phone has a copy of its own in the tray; once the letter is filed, nobody waits for it any more."""
    phone, other = Phone(1), Phone(2)
    letter = phone.patient()
    pair = phone.pair(letter)
    for device in (phone.device, other.device):
        receive(PRACTICE, device, bundle([pair]), None, NOW_MS, hold="device_revoked")
    assert {row["device"]: bytes(row["letter"]) for row in in_tray()} == dict.fromkeys((phone.device, other.device), pair[1])
    assert push(phone, [pair])[0]["answer"] == "stored"
    assert in_tray() == []


def test_the_tray_keeps_one_mebibyte_a_phone_and_so_many_rows(practice: None, monkeypatch: pytest.MonkeyPatch) -> None:
    phone, other = Phone(1), Phone(2)
    for _ in range(3):
        push(phone, [phone.pair(letter_of_exactly(phone, 32 * 1024), sha="0" * 64) for _ in range(15)])
    kept = [row["letter"] for row in in_tray()]
    assert (len(kept), sum(letter is not None for letter in kept)) == (45, 32)
    push(other, [other.pair(b"{")])
    assert sum(row["letter"] is not None for row in in_tray()) == 33
    monkeypatch.setattr(tray, "KEPT_ROWS_PER_DEVICE", 46)
    said = push(phone, [phone.pair(b"1"), phone.pair(b"2")])
    assert [one["code"] for one in said] == ["unparsable"] * 2
    assert len(in_tray()) == 47


def test_a_bundle_for_another_practice_is_refused_as_a_whole(practice: None) -> None:
    phone = Phone()
    pairs = phone.pairs(phone.patient())
    with pytest.raises(BundleUnreadable, match="practice_differs"):
        push(phone, pairs, practice="01890000-0000-7000-8000-000000000002")
    assert push(phone, pairs, practice=PRACTICE)[0]["answer"] == "stored"


def test_an_answer_names_the_id_only_when_it_has_the_form_of_one(practice: None) -> None:
    phone = Phone()
    good_id = phone.uuid()
    said = push(phone, phone.pairs(json_line({"id": good_id}), json_line({"id": "x" * 36}), json_line({"id": 7})))
    assert [one.get("id") for one in said] == [good_id, None, None]
    assert json.dumps(said).count(good_id) == 1
