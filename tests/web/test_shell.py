"""The built client as a browser gets it: types, how long each file may be kept, compression, 304, and nothing else.

Caching of hashed files and of the worker's script: RFC 8246 (`immutable`) and common practice.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from quietcuff.config import Settings
from quietcuff.web.shell import read_shell
from tests.web.conftest import built_client
from tests.web.house import House

HASHED = "/assets/index-Ab3_x-9Z.js"


@pytest.mark.parametrize(("path", "kind", "keep"), [
    ("/", "text/html; charset=utf-8", "no-cache"), ("/index.html", "text/html; charset=utf-8", "no-cache"),
    ("/sw.js", "text/javascript; charset=utf-8", "no-cache"),
    ("/manifest.webmanifest", "application/manifest+json", "no-cache"),
    ("/assets/plain.css", "text/css; charset=utf-8", "no-cache"),
    (HASHED, "text/javascript; charset=utf-8", "public, max-age=31536000, immutable")])
def test_type_and_keeping(still_house: House, path: str, kind: str, keep: str) -> None:
    """Only what carries a hash in its name may be kept without asking."""
    answer = still_house.phone().call("GET", path)
    assert (answer.status_code, answer.content_type, answer.headers["Cache-Control"]) == (200, kind, keep)
    assert answer.data


@pytest.mark.parametrize(("accepts", "encoding", "starts"), [
    ("gzip, deflate, br, zstd", "br", b"brotli bytes"), ("gzip", "gzip", b"gzip bytes"), ("", None, b"export const"),
    ("br;q=0, gzip", "gzip", b"gzip bytes"), ("identity", None, b"export const"), ("*", "br", b"brotli bytes")])
def test_compression(still_house: House, accepts: str, encoding: str | None, starts: bytes) -> None:
    """The best that was built and that the browser takes (RFC 9110, 12.5.3); caches are told that it depends."""
    answer = still_house.phone().call("GET", HASHED, headers={"Accept-Encoding": accepts})
    assert answer.headers.get("Content-Encoding") == encoding and answer.data.startswith(starts)
    assert answer.headers["Vary"] == "Accept-Encoding"


def test_not_modified(still_house: House) -> None:
    """The same ETag gives 304 without a body and with every header; another encoding has another ETag."""
    phone = still_house.phone()
    first = phone.call("GET", HASHED, headers={"Accept-Encoding": "br"})
    again = phone.call("GET", HASHED, headers={"Accept-Encoding": "br", "If-None-Match": first.headers["ETag"]})
    assert (again.status_code, again.data) == (304, b"")
    assert again.headers["Cache-Control"] == first.headers["Cache-Control"]
    assert phone.call("GET", HASHED).headers["ETag"] != first.headers["ETag"]
    assert phone.call("HEAD", "/").data == b""


@pytest.mark.parametrize("path", [
    "/.hidden", "/outside.txt", HASHED + ".map", HASHED + ".br", "/assets/../index.html", "/..%2f..%2fetc%2fpasswd",
    "/%2e%2e/%2e%2e/etc/passwd", "/assets/..%5c..%5cindex.html", "/etc/passwd", "/assets", "/assets/",
    "/index.html%00.js", "//etc/passwd", "/assets//plain.css", "/patients"])
def test_nothing_else_can_be_read(still_house: House, path: str) -> None:
    """Hidden files, links that lead out, maps, climbing up: a plain 404, and no redirect."""
    answer = still_house.phone().call("GET", path)
    assert answer.status_code == 404
    assert b"root:" not in answer.data and b"<title>shell" not in answer.data


def test_a_link_that_leads_out_is_not_read(tmp_path: Path) -> None:
    """The folder of the test has one; it is not among the files."""
    folder = built_client(tmp_path / "dist")
    assert (folder / "outside.txt").is_symlink()
    assert set(read_shell(folder)) == {
        "index.html", "sw.js", "manifest.webmanifest", "assets/index-Ab3_x-9Z.js", "assets/plain.css"}


def test_without_a_built_client(sqlite_template: Path, tmp_path: Path) -> None:
    """The address says what is missing; the API works."""
    database = f"sqlite:///{_copy(sqlite_template, tmp_path)}"
    house = House(Settings(data=tmp_path, database=database, client=tmp_path / "no"))
    answer = house.phone().call("GET", "/")
    assert answer.status_code == 503 and answer.json is not None and answer.json["code"] == "client_not_built"
    assert house.phone("nurse").call("GET", "/api/1/me").status_code == 200


def _copy(template: Path, folder: Path) -> Path:
    target = folder / "record.sqlite"
    target.write_bytes(template.read_bytes())
    return target


@pytest.mark.parametrize("tls", [False, True])
def test_hsts_only_with_tls(sqlite_template: Path, client_build: Path, tmp_path: Path, tls: bool) -> None:
    """RFC 6797: on plain http it must not be sent; with https, a year with subdomains, on errors as well."""
    database = f"sqlite:///{_copy(sqlite_template, tmp_path)}"
    phone = House(Settings(data=tmp_path, database=database, client=client_build, tls=tls)).phone()
    for path in ("/", "/nothing", "/api/1/me", HASHED):
        sent = phone.call("GET", path).headers.get("Strict-Transport-Security")
        assert sent == ("max-age=31536000; includeSubDomains" if tls else None)
