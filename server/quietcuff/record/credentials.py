"""What proves a phone or a person: opaque tokens of 256 bits, of which only the SHA-256 is stored.

Two proofs: the phone's (handing in) and the sign-in (reading, good only together with its phone's). Decides whether a
proof still holds at a given moment; must not decide what it opens, and knows neither cookies nor HTTP.
"""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import dataclass
from uuid import uuid4

from sqlalchemy import Connection, Row, delete, insert, or_, select, text, update
from sqlalchemy.orm import Session

from quietcuff.record.people import Device, Person, SignIn, SignInTries

DAY_MS, HOUR_MS, MINUTE_MS = 86_400_000, 3_600_000, 60_000


@dataclass(frozen=True)
class Limits:
    """How long the proofs hold and how many tries there are; milliseconds."""

    device_ms: int
    sign_in_ms: int
    idle_ms: int
    tries: int
    window_ms: int


@dataclass(frozen=True)
class KnownDevice:
    """A phone that showed its token. `standing` is good, revoked or expired."""

    id: str
    practice: str
    standing: str
    contact_at_ms: int


@dataclass(frozen=True)
class Signed:
    """A person signed in, as far as access is concerned."""

    person: str
    practice: str
    role: str
    device: str
    used_at_ms: int


def new_token() -> str:
    """256 random bits as text for a cookie."""
    return secrets.token_urlsafe(32)


def sha_of(token: str) -> str:
    """What is stored of a token; a plain hash is enough for 256 random bits."""
    return hashlib.sha256(token.encode()).hexdigest()


# --- the pause after wrong passwords ----------------------------------------------------------------------------------

_COUNT_TRY = text("""
    INSERT INTO sign_in_tries (key_sha, tries, began_at_ms) VALUES (:key, 1, :now)
    ON CONFLICT (key_sha) DO UPDATE SET
      tries = CASE WHEN sign_in_tries.began_at_ms <= :over THEN 1 ELSE sign_in_tries.tries + 1 END,
      began_at_ms = CASE WHEN sign_in_tries.began_at_ms <= :over THEN :now ELSE sign_in_tries.began_at_ms END
    RETURNING tries, began_at_ms""")


def count_try(orm: Session, login: str, network: str, limits: Limits, now_ms: int) -> int:
    """Counts a try BEFORE the password is looked at; gives 0 when it may go on, else how many ms to wait.

    Counted first, so that many tries at once cannot all pass before the first failure is written. The window is fixed:
    tries during the pause do not prolong it.
    """
    over = now_ms - limits.window_ms
    orm.execute(delete(SignInTries).where(SignInTries.began_at_ms <= over))
    row = orm.execute(_COUNT_TRY, {"key": tries_key(login, network), "now": now_ms, "over": over}).one()
    return 0 if row.tries <= limits.tries else max(1, row.began_at_ms + limits.window_ms - now_ms)


def forget_tries(orm: Session, login: str, network: str) -> None:
    """A success clears what was counted."""
    orm.execute(delete(SignInTries).where(SignInTries.key_sha == tries_key(login, network)))


def tries_key(login: str, network: str) -> str:
    """Stands for a login from a network without holding either."""
    return hashlib.sha256(f"{login}\n{network}".encode()).hexdigest()


# --- the phone --------------------------------------------------------------------------------------------------------


def admit_device(orm: Session, person: Row, proposed: str | None, shown: str | None, now_ms: int) -> tuple[str, str]:
    """The phone's id and token for somebody who signs in on it.

    The phone proposes the id it filed under; a known one of this practice is used again, so that its count goes on.
    An id of another practice or of a revoked phone, or none, gives a fresh one. A token still good is kept.
    """
    known = orm.get(Device, proposed) if proposed else None
    fresh = new_token()
    if known is not None and known.practice == person.practice and known.revoked_at_ms is None:
        token = _go_on(known, shown, fresh)
        known.person, known.contact_at_ms = person.id, now_ms
        return known.id, token
    made = proposed if proposed and known is None else str(uuid4())
    orm.add(Device(id=made, practice=person.practice, person=person.id, token_sha=sha_of(fresh), earlier_token_sha=None,
                   made_at_ms=now_ms, contact_at_ms=now_ms, revoked_at_ms=None))
    orm.flush()
    return made, fresh


def _go_on(known: Device, shown: str | None, fresh: str) -> str:
    if shown is not None and sha_of(shown) == known.token_sha:
        return shown
    known.earlier_token_sha, known.token_sha = known.token_sha, sha_of(fresh)
    return fresh


def device_of(connection: Connection, token: str, limits: Limits, now_ms: int) -> KnownDevice | None:
    """The phone that has this token, good or not; an unknown token: None."""
    sha = sha_of(token)
    row = connection.execute(
        select(Device.id, Device.practice, Device.contact_at_ms, Device.revoked_at_ms)
        .where(or_(Device.token_sha == sha, Device.earlier_token_sha == sha))).one_or_none()
    if row is None:
        return None
    standing = "revoked" if row.revoked_at_ms is not None else "good"
    if standing == "good" and now_ms - row.contact_at_ms >= limits.device_ms:
        standing = "expired"
    return KnownDevice(row.id, row.practice, standing, row.contact_at_ms)


def note_contact(orm: Session, token: str, now_ms: int) -> None:
    """Begins the phone's time anew; the newest token in use makes the earlier one void."""
    sha = sha_of(token)
    orm.execute(update(Device).where(or_(Device.token_sha == sha, Device.earlier_token_sha == sha))
                .values(contact_at_ms=now_ms))
    orm.execute(update(Device).where(Device.token_sha == sha).values(earlier_token_sha=None))


def revoke_device(orm: Session, device: str, now_ms: int) -> None:
    """A lost phone: it reads nothing any more, and what it hands in is held for a person to decide."""
    orm.execute(update(Device).where(Device.id == device).values(revoked_at_ms=now_ms))
    orm.execute(delete(SignIn).where(SignIn.device == device))


# --- the sign-in ------------------------------------------------------------------------------------------------------


def begin_sign_in(orm: Session, person: str, device: str, limits: Limits, now_ms: int) -> str:
    """A new sign-in's token; rows that ended by time are removed on the way."""
    orm.execute(delete(SignIn).where(or_(SignIn.made_at_ms <= now_ms - limits.sign_in_ms,
                                         SignIn.used_at_ms <= now_ms - limits.idle_ms)))
    token = new_token()
    orm.execute(insert(SignIn).values(
        token_sha=sha_of(token), person=person, device=device, made_at_ms=now_ms, used_at_ms=now_ms))
    return token


def signed_in(connection: Connection, token: str, limits: Limits, now_ms: int) -> Signed | None:
    """Who is signed in by this token; unknown, ended, idle for too long, or of somebody who left: None."""
    row = connection.execute(
        select(SignIn.person, SignIn.device, SignIn.made_at_ms, SignIn.used_at_ms, Person.practice, Person.role)
        .join(Person, Person.id == SignIn.person)
        .where(SignIn.token_sha == sha_of(token), Person.left_at_ms.is_(None))).one_or_none()
    if row is None or now_ms - row.made_at_ms >= limits.sign_in_ms or now_ms - row.used_at_ms >= limits.idle_ms:
        return None
    return Signed(row.person, row.practice, row.role, row.device, row.used_at_ms)


def note_use(orm: Session, token: str, now_ms: int) -> None:
    """Begins the idle time anew."""
    orm.execute(update(SignIn).where(SignIn.token_sha == sha_of(token)).values(used_at_ms=now_ms))


def end_sign_in(orm: Session, token: str) -> None:
    """Signing out; an unknown token changes nothing."""
    orm.execute(delete(SignIn).where(SignIn.token_sha == sha_of(token)))
