"""Another site cannot make a browser do anything here: each unsafe route × each way of trying, with both cookies shown.

The ways are those of the OWASP cheat sheet on cross-site request forgery: no header of ours, another origin, another
site by Fetch Metadata, and the three media types a plain form can send.
"""

from __future__ import annotations

import pytest

from tests.web.house import API, NDJSON, OURS, House
from tests.web.test_routes import OPERATIONS, UNSAFE, address

ROUTES = [(path, method) for path, method in OPERATIONS if method in UNSAFE]
FORGED: dict[str, dict[str, str]] = {
    "no header of ours": {"Sec-Fetch-Site": "same-origin"},
    "a wrong value in it": {"X-Quietcuff": "2", "Sec-Fetch-Site": "same-origin"},
    "cross-site": {"X-Quietcuff": "1", "Sec-Fetch-Site": "cross-site"},
    "same-site": {"X-Quietcuff": "1", "Sec-Fetch-Site": "same-site"},
    "typed into the address bar": {"X-Quietcuff": "1", "Sec-Fetch-Site": "none"},
    "cross-site, our origin": {"X-Quietcuff": "1", "Sec-Fetch-Site": "cross-site", "Origin": "http://localhost"},
    "wrong origin": {"X-Quietcuff": "1", "Origin": "https://elsewhere.invalid"},
    "origin null": {"X-Quietcuff": "1", "Origin": "null"},
    "our name as a prefix": {"X-Quietcuff": "1", "Origin": "http://localhost.elsewhere.invalid"},
    "another port": {"X-Quietcuff": "1", "Origin": "http://localhost:81"},
    "neither origin nor fetch metadata": {"X-Quietcuff": "1"},
}
FORM_TYPES = ("text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x")


def right_type(path: str, method: str) -> str:
    """The media type the route takes."""
    return next(iter(API["paths"][path][method].get("requestBody", {}).get("content", {"application/json": 0})))


def test_there_are_unsafe_routes() -> None:
    """The matrix below is not empty, and safe methods change nothing: no GET sets or ends a sign-in."""
    assert {path for path, _ in ROUTES} == {
        "/api/1/sign-in", "/api/1/sign-out", "/api/1/practices/{practice}/push"}


@pytest.mark.parametrize("way", FORGED)
@pytest.mark.parametrize(("path", "method"), ROUTES)
def test_a_forged_request_is_refused(still_house: House, path: str, method: str, way: str) -> None:
    """403, and nothing happened: the person is still signed in and the journal is empty."""
    phone = still_house.phone("nurse")
    headers = {**FORGED[way], "Content-Type": right_type(path, method)}
    answer = phone.call(method.upper(), address(path, still_house.north), headers=headers, data=b"{}")
    assert answer.status_code == 403
    assert answer.json is not None and answer.json["code"] == "request_not_ours"
    assert answer.headers.getlist("Set-Cookie") == []
    assert phone.call("GET", "/api/1/me").status_code == 200
    assert still_house.rows("SELECT count(*) FROM journal") == [(0,)]


@pytest.mark.parametrize("media", FORM_TYPES)
@pytest.mark.parametrize(("path", "method"), ROUTES)
def test_what_a_form_can_send_is_refused(still_house: House, path: str, method: str, media: str) -> None:
    """415, even with everything else right."""
    phone = still_house.phone("nurse")
    headers = {**OURS, "Content-Type": media}
    answer = phone.call(method.upper(), address(path, still_house.north), headers=headers, data=b"a=b")
    assert answer.status_code == 415
    assert answer.json is not None and answer.json["code"] == "media_type_wrong"
    assert phone.call("GET", "/api/1/me").status_code == 200


def test_an_old_browser_passes_by_its_origin(still_house: House) -> None:
    """Without Fetch Metadata the Origin of our own host is enough."""
    phone = still_house.phone("nurse")
    headers = {"X-Quietcuff": "1", "Origin": "http://localhost", "Content-Type": NDJSON}
    path, body = f"/api/1/practices/{still_house.north}/push", b'{"bundle":1,"count":0}\n'
    answer = phone.call("POST", path, headers=headers, data=body)
    assert answer.status_code == 200


def test_no_other_origin_is_ever_answered(still_house: House) -> None:
    """No header of cross-origin sharing on anything, asked for or not."""
    phone = still_house.phone("nurse")
    for method, path in (("GET", "/api/1/me"), ("OPTIONS", "/api/1/sign-in"), ("GET", "/")):
        answer = phone.call(method, path, headers={
            "Origin": "https://elsewhere.invalid", "Access-Control-Request-Method": "POST",
            "Access-Control-Request-Headers": "x-quietcuff"})
        assert not [name for name in answer.headers.keys() if name.lower().startswith("access-control")]
