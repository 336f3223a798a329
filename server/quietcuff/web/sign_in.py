"""Signing in and out, and who is signed in.

An unknown login and a wrong password get the same answer after the same work. Signing out ends reading on this phone;
handing in goes on, so that nothing that waits on the phone is lost.
"""

from __future__ import annotations

import ipaddress
from typing import Any

from flask import Blueprint, Response, g, jsonify, request
from sqlalchemy import Row, update

from quietcuff.contract.read_json import read_json
from quietcuff.contract.schemas import NotAsAgreed, load
from quietcuff.record import credentials, people
from quietcuff.record.database import reading, writing
from quietcuff.web import cookies
from quietcuff.web.guard import read_body
from quietcuff.web.parts import parts
from quietcuff.web.problems import Refused

routes = Blueprint("sign_in", __name__)


@routes.post("/api/1/sign-in")
def sign_in() -> Response:
    """Checks login and password; gives both cookies and who it is. 401 `sign_in_wrong`, 429 `too_many_tries`."""
    asked = _read_body()
    login = people.normal_login(asked["login"])
    network = network_of(request.remote_addr)
    _count_try(login, network)
    with reading() as connection:
        person = people.by_login(connection, login)
    if not parts().passwords.fits(person.password_hash if person else None, asked["password"]) or person is None:
        raise Refused(401, "sign_in_wrong")
    device = _admit(person, asked, login, network)
    return _introduce(person.id, device)


def _read_body() -> dict[str, Any]:
    try:
        return load("sign_in.1", read_json(read_body()))
    except NotAsAgreed as wrong:
        raise Refused(400, wrong.problem.why, wrong.problem.path) from wrong


def _count_try(login: str, network: str) -> None:
    with writing() as orm:
        wait_ms = credentials.count_try(orm, login, network, parts().limits, parts().now_ms())
    if wait_ms:
        raise Refused(429, "too_many_tries", wait_s=-(-wait_ms // 1000))


def _admit(person: Row, asked: dict[str, Any], login: str, network: str) -> str:
    """One transaction for all that a right password changes; gives the phone's id."""
    now_ms, passwords = parts().now_ms(), parts().passwords
    newer = passwords.hash(asked["password"]) if passwords.is_outdated(person.password_hash) else None
    with writing() as orm:
        # First, because it locks the counted row: of a double tap one waits here, and then finds the phone added.
        credentials.forget_tries(orm, login, network)
        if newer is not None:
            orm.execute(update(people.Person).where(people.Person.id == person.id).values(password_hash=newer))
        earlier = cookies.shown(cookies.SIGN_IN)
        if earlier is not None:
            credentials.end_sign_in(orm, earlier)
        device, device_token = credentials.admit_device(
            orm, person, asked.get("device"), cookies.shown(cookies.DEVICE), now_ms)
        token = credentials.begin_sign_in(orm, person.id, device, parts().limits, now_ms)
    cookies.wait(cookies.DEVICE, device_token)
    cookies.wait(cookies.SIGN_IN, token, parts().settings.sign_in_days * 86_400)
    return device


@routes.post("/api/1/sign-out")
def sign_out() -> Response:
    """Ends the sign-in shown, if any, and removes its cookie; the phone's own stays. Always 204."""
    token = cookies.shown(cookies.SIGN_IN)
    if token is not None:
        with writing() as orm:
            credentials.end_sign_in(orm, token)
    cookies.wait(cookies.SIGN_IN, None)
    return Response(status=204)


@routes.get("/api/1/me")
def me() -> Response:
    """Who is signed in, where, on which phone."""
    return _introduce(g.signed.person, g.signed.device)


def _introduce(person: str, device: str) -> Response:
    with reading() as connection:
        row = people.introduce(connection, person)
    return jsonify(**row._mapping, device=device, server_time_ms=parts().now_ms())


def network_of(address: str | None) -> str:
    """What tries are counted for: an IPv4 address, or the /64 of an IPv6 one, which is one connection's share."""
    try:
        known = ipaddress.ip_address(address or "")
    except ValueError:
        return "unknown"
    if isinstance(known, ipaddress.IPv6Address) and known.ipv4_mapped is None:
        return str(ipaddress.ip_network((known, 64), strict=False))
    return str(getattr(known, "ipv4_mapped", None) or known)
