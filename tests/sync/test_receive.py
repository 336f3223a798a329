"""A push: what is stored, what is a duplicate, and that positions, chain and head are what the format says.

Chain and density are worked out here with hashlib alone, from the words in wire/envelope.1.json.
"""

from __future__ import annotations

import hashlib
import json
from typing import Any

import pytest
from flask import Flask
from sqlalchemy import text

from quietcuff.contract.wire import check
from quietcuff.record import journal, measurements, patients
from quietcuff.record.database import found_practice, reading, writing
from quietcuff.record.errors import PracticeUnknown
from quietcuff.sync.receive import receive
from tests.sync.letters import NOW_MS, Letter, Pair, Phone, answers, bundle, zipped

PRACTICE = "01890000-0000-7000-8000-000000000001"
OTHER = "01890000-0000-7000-8000-000000000002"


@pytest.fixture(autouse=True)
def practices(record: Flask) -> None:
    with writing() as orm:
        found_practice(orm, PRACTICE, "Tierheim Ost", NOW_MS)
        found_practice(orm, OTHER, "Praxis West", NOW_MS)


def push(phone: Phone, pairs: list[Pair], practice: str = PRACTICE) -> list[dict[str, Any]]:
    """Pushes and returns the answers, after holding each line of them to its wire schema."""
    first, rest = answers(receive(practice, phone.device, zipped(bundle(pairs)), "gzip", NOW_MS))
    assert check("answers.1", first) is None
    assert [check("answer.1", one) for one in rest] == [None] * len(pairs)
    assert [one["line"] for one in rest] == list(range(1, len(pairs) + 1))
    return rest


def rows(practice: str = PRACTICE) -> list[Any]:
    with reading() as connection:
        query = text("SELECT * FROM journal WHERE practice = :practice ORDER BY position")
        return list(connection.execute(query, {"practice": practice}).mappings())


def three(phone: Phone) -> list[Letter]:
    cat = phone.patient()
    return [cat, phone.measurement(cat["id"]), phone.measurement(cat["id"])]


def test_letters_are_kept_byte_for_byte_at_dense_positions_with_their_chain() -> None:
    phone = Phone()
    pairs = phone.pairs(*three(phone), *three(phone))
    said = push(phone, pairs[:4]) + push(phone, pairs[4:])
    assert [(one["answer"], one["position"]) for one in said] == [("stored", n) for n in range(1, 7)]
    stored = rows()
    assert [bytes(row["letter"]) for row in stored] == [letter for _, letter in pairs]
    chain = bytes(32)
    for place, row in enumerate(stored, start=1):
        chain = hashlib.sha256(chain + hashlib.sha256(bytes(row["letter"])).digest()).digest()
        assert (row["position"], row["chain"]) == (place, chain.hex())
    with reading() as connection:
        head = connection.execute(text("SELECT position, chain FROM head WHERE practice = :p"), {"p": PRACTICE}).one()
    assert tuple(head) == (6, chain.hex())


def test_the_same_push_again_is_answered_with_the_same_positions_and_adds_nothing() -> None:
    """Duplicate check: without it the database refuses the whole second push."""
    phone = Phone()
    pairs = phone.pairs(*three(phone))
    first = push(phone, pairs)
    before = rows()
    again = push(phone, pairs)
    assert [one["answer"] for one in again] == ["duplicate"] * 3
    assert [one["position"] for one in again] == [one["position"] for one in first]
    assert rows() == before


def test_an_entry_twice_in_one_push_is_stored_once() -> None:
    phone = Phone()
    cat = phone.patient()
    said = push(phone, phone.pairs(cat, phone.patient("Bo"), cat))
    assert [(one["answer"], one["position"]) for one in said] == [("stored", 1), ("stored", 2), ("duplicate", 1)]


def test_the_same_id_with_other_bytes_is_refused_and_kept_aside() -> None:
    phone = Phone()
    cat = phone.patient()
    push(phone, phone.pairs(cat))
    said = push(phone, phone.pairs({**cat, "body": {"species": "cat", "name": "Other"}}))
    assert [(one["answer"], one["code"]) for one in said] == [("refused", "id_conflict")]
    in_one = phone.patient("Bo")
    said = push(phone, phone.pairs(in_one, {**in_one, "basis": 1}))
    assert [one["answer"] for one in said] == ["stored", "refused"]
    assert len(rows()) == 2
    with reading() as connection:
        assert connection.execute(text("SELECT code FROM tray")).scalars().all() == ["id_conflict"] * 2


def test_practices_are_apart_the_same_id_may_be_in_both() -> None:
    phone = Phone()
    pairs = phone.pairs(*three(phone))
    push(phone, pairs)
    said = push(phone, pairs, OTHER)
    assert [(one["answer"], one["position"]) for one in said] == [("stored", n) for n in (1, 2, 3)]
    with pytest.raises(PracticeUnknown):
        push(phone, pairs, "01890000-0000-7000-8000-000000000003")


def test_equal_assessments_are_stored_once_and_not_remarked_on() -> None:
    phone = Phone()
    said = push(phone, phone.pairs(*three(phone)))
    assert all("assessment" not in one for one in said)
    assert [(row["flags"], row["assessment"]) for row in rows()] == [("", None)] * 3


def test_a_phone_that_computes_otherwise_is_stored_with_the_servers_result_beside_it() -> None:
    phone = Phone()
    cat = phone.patient()
    letter = phone.measurement(cat["id"])
    servers, category = letter["assessment"], letter["assessment"].get("category")
    letter["assessment"] = {**servers, "category": "high" if category != "high" else "low"}
    for word in ("stored", "duplicate"):
        said = push(phone, phone.pairs(cat, letter))[1]
        assert (said["answer"], said["assessment"]) == (word, servers)
    assert rows()[1]["flags"] == "computation_differs"
    with reading() as connection:
        [seen] = measurements.measurements_of(connection, PRACTICE, cat["id"])
    assert json.loads(seen["server_assessment"]) == servers
    assert json.loads(seen["phone_assessment"]) == letter["assessment"]
    assert (seen["differs"], seen["category"], seen["dangling"]) == (1, category, False)


def test_true_is_not_one_when_assessments_are_compared() -> None:
    phone = Phone()
    letter = phone.measurement(phone.uuid())
    letter["assessment"] = {**letter["assessment"], "result_set": False}  # the server's is 0
    assert push(phone, phone.pairs(letter))[0]["assessment"]["result_set"] == 0
    assert rows()[0]["flags"] == "computation_differs"


@pytest.mark.parametrize(
    ("ahead_ms", "clock_offset_ms", "flags"),
    [(120_000, 0, ""), (120_001, 0, "clock_suspect"), (10**11, -(10**11), ""), (-(10**11), 0, ""), (0, 10**9, "clock_suspect")],
)
def test_only_a_clock_ahead_of_the_server_is_suspect(ahead_ms: int, clock_offset_ms: int, flags: str) -> None:
    """A letter may be weeks old; two minutes ahead is the limit, itself still good."""
    phone = Phone()
    push(phone, phone.pairs(phone.patient(made_at_ms=NOW_MS + ahead_ms, clock_offset_ms=clock_offset_ms)))
    assert rows()[0]["flags"] == flags


def test_an_amendment_replaces_the_whole_body_and_says_so() -> None:
    phone = Phone()
    cat = phone.patient("Mira")
    cat["body"]["mark"] = "kennel 7"
    push(phone, phone.pairs(cat))
    push(phone, phone.pairs(phone.patient("Mirabel", amends=cat["id"], reason="name misheard")))
    with reading() as connection:
        [seen] = patients.all_patients(connection, PRACTICE)
    assert (seen["patient"], seen["name"], seen["mark"], seen["amended"]) == (cat["id"], "Mirabel", None, 1)


def test_a_bag_is_filed_and_a_spoiled_one_is_refused_by_its_place() -> None:
    phone = Phone()
    good, amended, bad, nameless = phone.bag(), phone.bag("Repacked"), phone.bag(), phone.bag()
    amended |= {"amends": good["id"], "reason": "a cuff came"}
    bad["body"]["cuffs"][1]["width_mm"] = 0
    del nameless["body"]["name"]
    said = push(phone, phone.pairs(good, amended, bad, nameless))
    assert [(one["answer"], one.get("code"), one.get("path")) for one in said] == [
        ("stored", None, None),
        ("stored", None, None),
        ("refused", "schema_invalid", "/body/cuffs/1/width_mm"),
        ("refused", "schema_invalid", "/body/name"),
    ]


def test_a_patient_amended_with_all_it_may_say_is_filed_whole() -> None:
    """The journal keeps the very bytes; the projection tells the new name."""
    phone = Phone()
    cat = phone.patient("Mira")
    whole = phone.patient("Mira B", amends=cat["id"], reason="two Miras")
    whole["body"] |= {
        "identifiers": [{"kind": "chip", "text": "276098100000001"}],
        "sites_not_used": [{"site": "forearm", "side": "left", "why": "catheter", "until_day": 20_700}],
        "handling": {"grade": 2, "trick": "towel over the head"},
        "bruises": True,
    }
    assert [one["answer"] for one in push(phone, phone.pairs(cat, whole))] == ["stored", "stored"]
    with reading() as connection:
        [seen] = patients.all_patients(connection, PRACTICE)
        letters = journal.letters_read(journal.entries_between(connection, PRACTICE, 0, 2))
    assert (seen["patient"], seen["name"]) == (cat["id"], "Mira B")
    assert [letter["body"] for _, letter in letters] == [cat["body"], whole["body"]]


def test_what_a_revoked_phone_hands_in_waits_and_what_it_had_filed_stays_filed() -> None:
    phone = Phone()
    before, after = phone.pairs(phone.patient("Before")), phone.pairs(phone.patient("After"))
    push(phone, before)
    body = bundle(before + after)
    _, said = answers(receive(PRACTICE, phone.device, body, None, NOW_MS, hold="device_revoked"))
    assert [one["answer"] for one in said] == ["duplicate", "held"]
    assert (said[1]["code"], len(rows())) == ("device_revoked", 1)
    assert [one["answer"] for one in push(phone, before + after)] == ["duplicate", "stored"]
    with reading() as connection:
        assert connection.execute(text("SELECT count(*) FROM tray")).scalar() == 0
