"""Bodies too large, damaged or hostile get a problem with a code, never a 500, and nothing is written.

Parser traps from RFC 8259 (NaN is no JSON; names should be unique; depth may be limited) and RFC 1952 (members of a
gzip file may follow each other).
"""

from __future__ import annotations

import gzip
import io
import json
import zlib
from random import Random

import pytest

from tests.sync.letters import Phone as Letters
from tests.sync.letters import bundle
from tests.web.house import NDJSON, OURS, House

GOOD = {"login": "nurse", "password": "x"}
JSON = {**OURS, "Content-Type": "application/json"}
HOSTILE = {
    "NaN": (b'{"login":"a","password":NaN}', "not_finite"),
    "Infinity": (b'{"login":"a","password":-Infinity}', "not_finite"),
    "a key twice": (b'{"login":"nurse","login":"manager","password":"x"}', "key_twice"),
    "depth": (b'{"login":' + b"[" * 5000 + b"]" * 5000 + b',"password":"x"}', "too_deep"),
    "17 levels": (b"[" * 17 + b"]" * 17, "too_deep"),
    "half a character": (b'{"login":"\\ud800","password":"x"}', "lone_surrogate"),
    "no UTF-8": (b'{"login":"\xff","password":"x"}', "not_utf8"),
    "nothing": (b"", "not_json"),
    "two documents": (b"{}{}", "not_json"),
    "byte order mark": (b"\xef\xbb\xbf{}", "not_json"),
    "a list": (b"[]", "not_an_object"),
    "null": (b"null", "not_an_object"),
    "more than asked": (b'{"login":"a","password":"x","role":"manager"}', "unknown_key"),
    "missing": (b'{"login":"a"}', "missing"),
    "a number": (b'{"login":1,"password":"x"}', "not_text"),
    "empty login": (b'{"login":"","password":"x"}', "too_short"),
    "long password": (b'{"login":"a","password":"' + b"x" * 201 + b'"}', "too_long"),
    "another form of id": (b'{"login":"a","password":"x","device":"1"}', "wrong_form"),
}


@pytest.mark.parametrize("what", HOSTILE)
def test_hostile_json(still_house: House, what: str) -> None:
    """400 with the reason as its code; no try is counted for what could not be read."""
    body, code = HOSTILE[what]
    answer = still_house.phone().call("POST", "/api/1/sign-in", data=body, headers=JSON)
    assert answer.status_code == 400 and answer.mimetype == "application/problem+json"
    assert answer.json is not None and answer.json["code"] == code
    assert still_house.rows("SELECT * FROM sign_in_tries") == []


def test_the_path_of_what_is_wrong_is_told(still_house: House) -> None:
    """A JSON Pointer to the key; not the value that came in."""
    answer = still_house.phone().call("POST", "/api/1/sign-in", json={**GOOD, "ro/le": "canary"})
    assert answer.json is not None and answer.json["path"] == "/ro~1le" and b"canary" not in answer.data


@pytest.mark.parametrize(("size", "status"), [(16_384, 401), (16_385, 413)])
def test_size_of_a_sign_in(house: House, size: int, status: int) -> None:
    """At the limit it is read, one byte above it is not."""
    body = json.dumps(GOOD).encode()
    body += b" " * (size - len(body))
    answer = house.phone().call("POST", "/api/1/sign-in", data=body, headers=JSON)
    assert answer.status_code == status


def test_size_without_a_declared_length(still_house: House) -> None:
    """A body sent in chunks is cut off at the limit as well."""
    answer = still_house.phone().call(
        "POST", "/api/1/sign-in", input_stream=io.BytesIO(b" " * 20_000),
        headers={**JSON, "Transfer-Encoding": "chunked"},
        environ_overrides={"wsgi.input_terminated": True})
    assert answer.status_code == 413 and answer.json is not None and answer.json["code"] == "too_large"


def test_signing_out_takes_no_body(house: House) -> None:
    """Nothing is read where nothing is expected."""
    answer = house.phone("nurse").call("POST", "/api/1/sign-out", json={"a": 1})
    assert answer.status_code == 413


EMPTY = b'{"bundle":1,"count":0}\n'
BUNDLES = {
    "too long": (b" " * (512 * 1024 + 1), "", 413, "too_large"),
    "inflates too far": (gzip.compress(b" " * (512 * 1024 + 1)), "gzip", 413, "bundle_too_large"),
    "a bomb": (gzip.compress(b"\n" * 200_000_000, 9), "gzip", 413, "bundle_too_large"),
    "too many entries": (b'{"bundle":1,"count":101}\n' + b"{}\n" * 202, "", 413, "too_many_entries"),
    "a million newlines": (gzip.compress(b"\n" * 500_000), "gzip", 413, "too_many_entries"),
    "damaged": (gzip.compress(EMPTY)[:-9] + b"xxxxxxxxx", "gzip", 400, "gzip_damaged"),
    "cut off": (gzip.compress(EMPTY)[:-4], "gzip", 400, "gzip_damaged"),
    "two members": (gzip.compress(EMPTY) + gzip.compress(EMPTY), "gzip", 400, "gzip_damaged"),
    "not gzip": (EMPTY, "gzip", 400, "gzip_damaged"),
    "another packing": (zlib.compress(EMPTY), "deflate", 415, "encoding_unknown"),
    "nothing": (b"", "", 400, "bundle_unreadable"),
    "a line missing": (b'{"bundle":1,"count":1}\n{}\n', "", 400, "bundle_unreadable"),
    "another count": (b'{"bundle":1,"count":2}\n{}\n{}\n', "", 400, "bundle_unreadable"),
    "no header": (b"{}\n", "", 400, "bundle_unreadable"),
    "NaN in the header": (b'{"bundle":1,"count":NaN}\n', "", 400, "bundle_unreadable"),
    "another practice": (b'{"bundle":1,"count":0,"practice":"00000000-0000-4000-8000-000000000000"}\n', "", 400,
                         "practice_differs"),
}


@pytest.mark.parametrize("what", BUNDLES)
def test_a_bundle_that_cannot_be_taken(still_house: House, what: str) -> None:
    """A problem with a code; the journal and the tray stay empty."""
    body, encoding, status, code = BUNDLES[what]
    answer = still_house.phone("nurse").push(body, headers={"Content-Encoding": encoding} if encoding else {})
    assert answer.status_code == status
    assert answer.json is not None and answer.json["code"] == code
    assert still_house.rows("SELECT count(*) FROM journal") == [(0,)] == still_house.rows("SELECT count(*) FROM tray")


@pytest.mark.parametrize("body", [b"{}\n{}\n", b"\xff\n\xff\n", b"[1]\nnull\n", b'{"device":NaN}\n{"id":1,"id":2}\n'])
def test_a_hostile_entry_is_answered_by_itself(house: House, body: bytes) -> None:
    """The push is taken; the entry is refused with a code and never keeps others out."""
    answer = house.phone("nurse").push(b'{"bundle":1,"count":1}\n' + body)
    assert answer.status_code == 200 and answer.mimetype == NDJSON
    (line,) = [json.loads(one) for one in answer.data.splitlines()[1:]]
    assert line["answer"] == "refused" and line["code"]


def spoilt(body: bytes, random: Random) -> bytes:
    """A few bytes replaced, removed, doubled or taken from the words that parsers stumble over."""
    words = [b"{", b"}", b"[", b'"', b"\\ud800", b"NaN", b"1e999", b"\n", b"\x00", b"\xff", b"null", b"-0", b",", b"9" * 400]
    for _ in range(random.randint(1, 4)):
        start = random.randrange(len(body))
        body = body[:start] + random.choice(words) + body[start + random.choice((0, 1, 1, 5, 40)):]
    return body


def test_spoilt_bodies_never_break_the_server(still_house: House) -> None:
    """Three hundred spoilt bodies a route, seeded: an answer each, never a 5xx (what breaks judging would be `held`)."""
    random, phone, letters = Random(20), still_house.phone("nurse"), Letters()
    animal = letters.patient()
    good = bundle(letters.pairs(animal, letters.measurement(animal["id"])))
    for _ in range(300):
        pushed = phone.push(spoilt(good, random))
        assert pushed.status_code in (200, 400, 413)
        if pushed.status_code == 200:
            assert "judging_failed" not in pushed.get_data(as_text=True)
        body = spoilt(json.dumps({"login": "x", "password": "y", "device": phone.id}).encode(), random)
        answer = still_house.phone().call("POST", "/api/1/sign-in", data=body, headers=JSON)
        assert answer.status_code in (400, 401, 413, 429)


@pytest.mark.parametrize(("query", "path"), [
    ("?position=-1", "/position"), ("?position=1.0", "/position"), ("?position=01", "/position"),
    ("?position=", "/position"), ("?position=٣", "/position"), ("?position=9007199254740992", "/position"),
    ("?position=1&position=2", "/position"), ("?epoch=x", "/epoch"), ("?positon=3", "/positon"), ("?a%2Fb=1", "/a~1b")])
def test_a_pull_is_asked_strictly(still_house: House, query: str, path: str) -> None:
    """What would silently mean another place is refused, with the parameter's name."""
    answer = still_house.phone("nurse").pull(query)
    assert answer.status_code == 400
    assert answer.json is not None and (answer.json["code"], answer.json["path"]) == ("query_wrong", path)
