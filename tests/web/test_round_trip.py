"""The whole way of a visit's work through HTTP: sign in, push a bundle, answers, pull, rows in the record.

Bundles are made by the letters of the tests of `sync`, line by line; hashes and the chain are worked out here from the
description in words (SHA-256, FIPS 180-4, by the standard library).
"""

from __future__ import annotations

import gzip
import hashlib
import json
from typing import Any

from tests.sync.letters import Phone as Letters
from tests.sync.letters import answers, bundle
from tests.web.house import API, House, must_be_valid


def wire(name: str) -> dict[str, Any]:
    """A reference to a wire file, as a schema."""
    return {"$ref": f"{name}.json"}


def read_page(lines: bytes) -> tuple[dict[str, Any], list[tuple[dict[str, Any], bytes]]]:
    """A pulled bundle, every part of it checked against the wire schemas."""
    header_line, *rest = lines.removesuffix(b"\n").split(b"\n")
    header = json.loads(header_line)
    must_be_valid(header, wire("bundle.1"))
    pairs = [(json.loads(rest[at]), rest[at + 1]) for at in range(0, len(rest), 2)]
    for envelope, letter in pairs:
        must_be_valid(envelope, wire("envelope.1"))
        must_be_valid(json.loads(letter), wire("letter.1"))
    assert header["count"] == len(pairs)
    return header, pairs


def test_there_and_back(any_house: House) -> None:
    """An animal and its measurement, packed; filed once however often they come; the same bytes for a colleague."""
    nurse, letters = any_house.phone("nurse"), Letters()
    animal = letters.patient()
    measurement = letters.measurement(animal["id"])
    pairs = letters.pairs(animal, measurement)
    body = gzip.compress(bundle(pairs, practice=any_house.north, device=nurse.id))

    answer = nurse.push(body, headers={"Content-Encoding": "gzip"})
    assert answer.status_code == 200
    first, lines = answers(answer.data)
    must_be_valid(first, wire("answers.1"))
    for line in lines:
        must_be_valid(line, wire("answer.1"))
    assert [(line["answer"], line["position"], line["id"]) for line in lines] == [
        ("stored", 1, animal["id"]), ("stored", 2, measurement["id"])]
    again = answers(nurse.push(body, headers={"Content-Encoding": "gzip"}).data)
    assert [(line["answer"], line["position"]) for line in again[1]] == [("duplicate", 1), ("duplicate", 2)]

    colleague = any_house.phone("veterinarian")
    header, entries = read_page(colleague.pull().data)
    assert (header["head"], header["more"], header["epoch"]) == (2, False, first["epoch"])
    assert [letter for _, letter in entries] == [letter for _, letter in pairs], "bytes as they were made"
    chain = bytes(32)
    for (envelope, letter), after in zip(entries, (0, 1), strict=True):
        chain = hashlib.sha256(chain + hashlib.sha256(letter).digest()).digest()
        assert (envelope["after"], envelope["chain"]) == (after, chain.hex())
    rows = any_house.rows("SELECT practice, measurement, patient, differs FROM measurements")
    assert rows == [(any_house.north, measurement["id"], animal["id"], 0)]
    assert any_house.rows("SELECT practice, patient, name FROM patients") == [(any_house.north, animal["id"], "Mira")]


def test_a_cursor_goes_on_and_ends(any_house: House) -> None:
    """From the last position on there is nothing, beyond it the cursor is void, as with another epoch."""
    phone, letters = any_house.phone("nurse"), Letters()
    phone.push(bundle(letters.pairs(letters.patient(), letters.patient("Tom"))))
    header, _ = read_page(phone.pull().data)
    epoch = header["epoch"]
    assert [e["position"] for e, _ in read_page(phone.pull(f"?epoch={epoch}&position=1").data)[1]] == [2]
    assert read_page(phone.pull(f"?epoch={epoch}&position=2").data)[1] == []
    another = "00000000-0000-4000-8000-000000000000"
    for query in (f"?epoch={epoch}&position=3", f"?epoch={another}&position=0", "?position=1"):
        void = phone.pull(query)
        assert void.status_code == 409 and void.json is not None and void.json["code"] == "cursor_void"


def test_practices_do_not_meet(any_house: House) -> None:
    """The same letter in both practices is two entries; neither sees the other's."""
    letters = Letters()
    body = bundle(letters.pairs(letters.patient()))
    north, south = any_house.phone("nurse"), any_house.phone("south")
    assert answers(north.push(body).data)[1][0]["answer"] == "stored"
    assert read_page(south.pull().data)[1] == []
    assert answers(south.push(body).data)[1][0]["answer"] == "stored"
    assert len(read_page(north.pull().data)[1]) == len(read_page(south.pull().data)[1]) == 1


def test_the_limit_of_a_push_is_as_described(any_house: House) -> None:
    """A body of exactly the described size is looked at by `sync`, not cut off by the guard."""
    most = API["paths"]["/api/1/practices/{practice}/push"]["post"]["x-body-most-bytes"]
    body = b'{"bundle":1,"count":1}\n{}\n"' + b"x" * (most - 29) + b'"\n'
    assert len(body) == most
    first, lines = answers(any_house.phone("nurse").push(body).data)
    assert first["count"] == 1 and lines[0]["answer"] == "refused"
