"""Every route is described, every description is a route, and who may use it is as `x-who` says. The matrix comes from
the document, so a new route is tested the day it appears.
"""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from quietcuff.contract.words import has_words
from quietcuff.record import credentials
from quietcuff.record.database import writing
from quietcuff.record.people import ROLES
from quietcuff.web import problems, sync_routes
from quietcuff.web.operations import path_of
from tests.web.house import API, NDJSON, OURS, WIRE, House, Phone, registry

UNSAFE = ("post", "put", "patch", "delete")
OPERATIONS = [(path, method) for path, methods in API["paths"].items() for method in methods if method != "parameters"]
CALLERS = ("nobody", *ROLES, "phone alone", "revoked phone", "idle sign-in")
FILL = {"document": "letter.1", "name": "sw.js", "folder": "assets"}


def described(path: str, method: str) -> dict[str, Any]:
    """One operation of the document."""
    return API["paths"][path][method]


def address(path: str, practice: str) -> str:
    """A path with its parts filled in."""
    values = {**FILL, "practice": practice}
    if path == "/{folder}/{name}":
        values["name"] = "plain.css"
    return re.sub(r"\{(\w+)\}", lambda part: values[part[1]], path)


def call(phone: Phone, path: str, method: str, practice: str) -> int:
    """A request that is right in all but perhaps its caller; gives the status."""
    headers = dict(OURS) if method in UNSAFE else {}
    body = {}
    if "push" in path:
        body = {"data": b'{"bundle":1,"count":0}\n'}
        headers["Content-Type"] = NDJSON
    elif "sign-in" in path:
        body = {"json": {"login": "nurse", "password": "wrong on purpose"}}
    return phone.call(method.upper(), address(path, practice), headers=headers, **body).status_code


# --- the document and the routes --------------------------------------------------------------------------------------


def test_routes_and_document_are_the_same(still_house: House) -> None:
    """Both ways: nothing served that is not described, nothing described that is not served."""
    served = {(path_of(str(rule)), method.lower()) for rule in still_house.app.url_map.iter_rules()
              for method in rule.methods - {"HEAD"}}
    assert served == set(OPERATIONS)


def test_every_reference_leads_to_a_wire_file() -> None:
    """Each $ref of the document, and of the files themselves, can be followed."""
    references = set(re.findall(r'"\$ref": "([^"]+)"', (WIRE / "api.json").read_text(encoding="utf-8")))
    assert {"sign_in.1.json", "signed_in.1.json", "problem.1.json"} <= references
    for reference in references:
        assert registry().contents(reference)["type"] == "object"


def test_the_document_is_served_as_it_stands(still_house: House) -> None:
    """Byte for byte, and the schemas beside it; no other file of the disk."""
    phone = still_house.phone()
    assert phone.call("GET", "/api/1/api.json").data == (WIRE / "api.json").read_bytes()
    for file in WIRE.glob("*.1.json"):
        assert phone.call("GET", f"/api/1/{file.name}").data == file.read_bytes()
    for name in ("nothing.json", "..%2Fapi.json", "..%2f..%2frules%2fv1%2fcuff.json", "%00.json"):
        assert phone.call("GET", f"/api/1/{name}").status_code == 404


def test_each_operation_says_who_and_how_much() -> None:
    """`x-who` is `anyone`, `device` or roles; whatever takes a body says how large it may be."""
    for path, method in OPERATIONS:
        operation = described(path, method)
        who = set(operation["x-who"])
        assert who and (who in ({"anyone"}, {"device"}) or who <= set(ROLES)), path
        assert method not in UNSAFE or "x-body-most-bytes" in operation, path
        assert operation["operationId"] and operation["summary"] and operation["responses"], path


def test_an_undescribed_route_is_closed(house: House) -> None:
    """Somebody adds a route and forgets the document: nobody can use it."""
    house.app.add_url_rule("/api/1/forgotten/<a>/<b>", view_func=lambda a, b: "secret")
    assert house.phone("manager").call("GET", "/api/1/forgotten/1/2").status_code == 404


# --- who may use what -------------------------------------------------------------------------------------------------


def caller(house: House, kind: str) -> Phone:
    """A phone in the hands of such a caller."""
    if kind == "nobody":
        return house.phone()
    phone = house.phone(kind if kind in ROLES else "nurse")
    if kind == "phone alone":
        phone.client.delete_cookie("__Host-sign_in")
    elif kind == "revoked phone":
        with house.app.app_context(), writing() as orm:
            credentials.revoke_device(orm, phone.id, house.clock.ms)
    elif kind == "idle sign-in":
        house.clock.move(hours=12)
    return phone


def is_allowed(kind: str, who: set[str]) -> bool:
    """What the document says about such a caller."""
    if who == {"anyone"}:
        return True
    if who == {"device"}:
        return kind != "nobody"
    return kind in who


@pytest.mark.parametrize("kind", CALLERS)
def test_access(house: House, kind: str) -> None:
    """Each route by each caller. Allowed: not 401, 403 or 404. Else 401 or 403, whatever else is right about it.

    What a revoked phone hands in is answered entry by entry (held), so it is let through to there.
    """
    for path, method in OPERATIONS:
        status = call(caller(house, kind), path, method, house.north)
        if path == "/api/1/sign-in":
            assert status == 401  # the password is wrong on purpose
        elif is_allowed(kind, set(described(path, method)["x-who"])):
            assert status in (200, 204), f"{kind} {method} {path}: {status}"
        else:
            assert status in (401, 403), f"{kind} {method} {path}: {status}"


@pytest.mark.parametrize("left_out", ROLES)
def test_a_role_that_is_not_named_is_refused(house: House, left_out: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Today all roles may read; a document that leaves one out must be obeyed at once."""
    operations = house.app.extensions["quietcuff"].operations
    key = ("/api/1/practices/{practice}/pull", "GET")
    narrowed = type(operations[key])(**{**vars(operations[key]), "who": frozenset(ROLES) - {left_out}})
    monkeypatch.setitem(operations, key, narrowed)
    statuses = {role: house.phone(role).pull().status_code for role in ROLES}
    assert statuses == {role: 403 if role == left_out else 200 for role in ROLES}


@pytest.mark.parametrize("path", [path for path in API["paths"] if "{practice}" in path])
def test_another_practice_is_like_none(any_house: House, path: str) -> None:
    """The same status, body and headers for a practice of others, for none, and for what is no id at all."""
    phone = any_house.phone("manager")
    method = next(m for p, m in OPERATIONS if p == path)
    answers = []
    for practice in (any_house.south, "00000000-0000-4000-8000-000000000000", "x", "%20", any_house.north.upper()):
        headers = {**OURS, "Content-Type": NDJSON} if method in UNSAFE else {}
        data = {"data": b'{"bundle":1,"count":0}\n'} if method in UNSAFE else {}
        answer = phone.call(method.upper(), address(path, practice), headers=headers, **data)
        answers.append((answer.status_code, answer.data, sorted(answer.headers)))
    assert answers[0][0] == 404 and json.loads(answers[0][1])["code"] == "not_found"
    assert all(answer == answers[0] for answer in answers)


# --- errors and their words -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("method", "path", "status", "code"), [
    ("GET", "/api/1/none", 404, "not_found"), ("GET", "/a/b/c/d", 404, "not_found"),
    ("GET", "/nothing", 404, "not_found"),
    ("GET", "/api/1/sign-in", 405, "method_not_allowed"), ("DELETE", "/api/1/me", 405, "method_not_allowed"),
    ("OPTIONS", "/api/1/sign-in", 405, "method_not_allowed"), ("TRACE", "/", 405, "method_not_allowed"),
    ("POST", "/", 405, "method_not_allowed"), ("PUT", "/api/1/api.json", 405, "method_not_allowed")])
def test_no_such_route(still_house: House, method: str, path: str, status: int, code: str) -> None:
    """The framework's own errors are problems as well, and 405 names what is allowed (RFC 9110, 15.5.6)."""
    answer = still_house.phone().call(method, path)
    assert (answer.status_code, answer.mimetype) == (status, "application/problem+json")
    assert answer.json is not None and answer.json["code"] == code and answer.json["type"] == "about:blank"
    assert status != 405 or answer.headers["Allow"]
    assert answer.headers["Cache-Control"] == "no-store"


def test_an_error_nobody_foresaw_tells_nothing(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """A problem with all headers; the exception's text stays in the server's log."""
    def fail() -> None:
        raise RuntimeError("secret detail")
    monkeypatch.setitem(house.app.view_functions, "health.livez", fail)
    answer = house.phone().client.get("/livez")
    assert answer.status_code == 500 and answer.json == {
        "type": "about:blank", "title": "Internal Server Error", "status": 500, "code": "server_error"}
    assert answer.headers["X-Content-Type-Options"] == "nosniff" and answer.headers["Cache-Control"] == "no-store"


def codes_in_the_code() -> set[str]:
    """Every code that a problem can have, as far as it is written in `web`."""
    text = "".join(file.read_text(encoding="utf-8") for file in sorted(
        (WIRE.parents[1] / "server" / "quietcuff" / "web").glob("*.py")))
    held = set(filter(None, sync_routes._HOLD.values()))
    return {*held, *re.findall(r'Refused\(\d+, "(\w+)"', text), *problems._BY_STATUS.values(), "request_wrong",
            *(code for _, code in problems._RECORD_STATUS.values())}


def test_every_code_has_a_sentence() -> None:
    """A person never meets a bare code."""
    codes = codes_in_the_code()
    assert {"sign_in_wrong", "too_many_tries", "device_unknown", "query_wrong", "cursor_void"} <= codes
    assert [code for code in sorted(codes) if not has_words(f"error-{code.replace('_', '-')}")] == []


def test_everything_the_rooms_below_raise_is_translated() -> None:
    """Each code of the record and of sync that can reach a route has a status of its own, and is no 500."""
    package = WIRE.parents[1] / "server" / "quietcuff"
    text = (package / "sync" / "bundle.py").read_text() + (package / "sync" / "receive.py").read_text()
    raised = set(re.findall(r'BundleUnreadable\("(\w+)"', text))
    assert {"gzip_damaged", "count_differs", "bundle_too_large"} <= raised
    assert raised <= set(problems._RECORD_STATUS)
