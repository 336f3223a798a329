"""A whole server for the tests of `web`: two practices with people of every role, a clock that can be set, and phones.

Every answer a phone gets is held against wire/api.json (status described, body valid by `jsonschema`, a general
reference library) and against the headers that each answer must carry, whatever the test is about.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any
from uuid import uuid4

import jsonschema
from flask import Flask
from referencing import Registry, Resource
from werkzeug.test import Client, TestResponse

from quietcuff.app import create_app
from quietcuff.config import Settings
from quietcuff.record.database import writing
from quietcuff.record.passwords import Passwords
from quietcuff.record.people import ROLES, NewPerson, add_person, found

WIRE = Path(__file__).resolve().parents[2] / "shared_schemas" / "wire"
API: dict[str, Any] = json.loads((WIRE / "api.json").read_text(encoding="utf-8"))
OURS = {"X-Quietcuff": "1", "Sec-Fetch-Site": "same-origin"}
NDJSON = "application/x-ndjson"
PASSWORD = "quiet rooms help cats"
START_MS = 1_790_000_000_000
# Written out here once more, on purpose: a header lost from the code must not be lost from the test as well.
HEADERS = {
    "Content-Security-Policy":
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; "
        "connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; "
        "object-src 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types quietcuff-worker",
    "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin",
}


@cache
def registry() -> Registry:
    """Every wire file under its own name, as the references name it."""
    files = {file.name: json.loads(file.read_text(encoding="utf-8")) for file in WIRE.glob("*.json")}
    resources = {name: Resource.from_contents(document) for name, document in files.items() if name != "api.json"}
    return Registry().with_resources([*resources.items()])


def must_be_valid(document: Any, schema: dict[str, Any]) -> None:
    """Raises jsonschema's own error where the document is not what the schema says."""
    jsonschema.Draft202012Validator(schema, registry=registry()).validate(document)


def must_carry_headers(answer: TestResponse) -> None:
    """The headers of every answer, whatever it is."""
    for name, value in HEADERS.items():
        assert answer.headers.get(name) == value, f"{name} is missing or other on {answer.status}"
    features = answer.headers["Permissions-Policy"].split(", ")
    assert "screen-wake-lock=(self)" in features and "camera=()" in features and "geolocation=()" in features
    assert [one for one in features if not one.endswith("=()")] == ["screen-wake-lock=(self)"]


def must_be_described(template: str, method: str, answer: TestResponse) -> None:
    """The status is one of those described, and the body is what is described for it."""
    described = API["paths"][template][method.lower()]["responses"]
    assert str(answer.status_code) in described, f"{method} {template} answered {answer.status_code}, not described"
    content = described[str(answer.status_code)].get("content", {})
    if not content:
        assert answer.data == b""
    elif "*/*" not in content:
        assert answer.mimetype in content
        if answer.mimetype != NDJSON:
            must_be_valid(json.loads(answer.data), content[answer.mimetype]["schema"])


def template_of(path: str) -> str | None:
    """The described path that an address belongs to; literal ones win."""
    parts = path.partition("?")[0].split("/")
    fitting = [known for known in API["paths"] if _fits(known.split("/"), parts)]
    return min(fitting, key=lambda known: known.count("{"), default=None)


def _fits(known: list[str], parts: list[str]) -> bool:
    return len(known) == len(parts) and all(
        k == p or (k.startswith("{") and p and (k.endswith("}") or p.endswith(k.partition("}")[2])))
        for k, p in zip(known, parts, strict=True))


@dataclass
class Phone:
    """A browser with its own cookies. `call` sends what our client would send, unless told otherwise."""

    client: Client
    id: str = field(default_factory=lambda: str(uuid4()))
    practice: str = ""

    def call(self, method: str, path: str, headers: dict[str, str] | None = None, **more: Any) -> TestResponse:
        """One request; the answer is checked as said above."""
        ours = OURS if method not in ("GET", "HEAD") else {}
        answer = self.client.open(path, method=method, headers=ours if headers is None else headers, **more)
        must_carry_headers(answer)
        if path.startswith("/api/") or answer.status_code >= 400:
            assert answer.headers["Cache-Control"] == "no-store"
        template = template_of(path)
        if template is not None and method.lower() in API["paths"][template]:
            must_be_described(template, method, answer)
        return answer

    def sign_in(self, login: str, password: str = PASSWORD, **more: Any) -> TestResponse:
        """Signs in with this phone's id; remembers the id and the practice that it is given."""
        asked = {"login": login, "password": password, "device": self.id}
        answer = self.call("POST", "/api/1/sign-in", json=asked, **more)
        if answer.status_code == 200:
            assert answer.json is not None
            self.id, self.practice = answer.json["device"], answer.json["practice"]
        return answer

    def push(self, body: bytes, practice: str | None = None, headers: dict[str, str] | None = None) -> TestResponse:
        """Hands in a bundle as it is."""
        return self.call("POST", f"/api/1/practices/{practice or self.practice}/push", data=body,
                         headers={**OURS, "Content-Type": NDJSON, **(headers or {})})

    def pull(self, query: str = "", practice: str | None = None) -> TestResponse:
        """Gets a page."""
        return self.call("GET", f"/api/1/practices/{practice or self.practice}/pull{query}")

    def cookie(self, name: str) -> str | None:
        """The value of a cookie this phone holds."""
        found = self.client.get_cookie(name)
        return found.value if found else None


@cache
def hashed_password() -> str:
    """Everybody's password, hashed once a run as a default installation does it."""
    return Passwords(Settings().argon2_memory_kib, Settings().argon2_passes, 1).hash(PASSWORD)


class Clock:
    """Time that stands still until it is moved."""

    def __init__(self) -> None:
        self.ms = START_MS

    def __call__(self) -> int:
        return self.ms

    def move(self, *, minutes: int = 0, hours: int = 0, days: int = 0, ms: int = 0) -> None:
        """Forward by so much."""
        self.ms += ((days * 24 + hours) * 60 + minutes) * 60_000 + ms


class House:
    """The server with practice "North" (one person a role, the role is the login) and "South" (login `south`)."""

    def __init__(self, settings: Settings) -> None:
        self.clock = Clock()
        self.app: Flask = create_app(settings, now_ms=self.clock)
        hashed = hashed_password()
        self.people: dict[str, str] = {}
        with self.app.app_context(), writing() as orm:
            first, *others = ROLES
            self.north, self.people[first] = found(orm, "North", NewPerson(first, "Name", first, hashed), START_MS)
            for role in others:
                self.people[role] = add_person(orm, self.north, NewPerson(role, "Name", role, hashed), START_MS)
            self.south, self.people["south"] = found(orm, "South", NewPerson("south", "Sol", "nurse", hashed), START_MS)

    def phone(self, login: str | None = None) -> Phone:
        """A phone without cookies, or one on which somebody has signed in."""
        phone = Phone(self.app.test_client())
        if login is not None:
            assert phone.sign_in(login).status_code == 200
        return phone

    def rows(self, statement: str) -> list[tuple[Any, ...]]:
        """Reads the database itself."""
        from sqlalchemy import text

        from quietcuff.record.database import reading
        with self.app.app_context(), reading() as connection:
            return [tuple(row) for row in connection.execute(text(statement))]
