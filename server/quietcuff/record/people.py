"""Who belongs to a practice: the people, their phones, and the tables of their sign-ins.

Answers who somebody is; what a password or a cookie proves is decided in `credentials`. Holds no letter: a person who
left stays here, because letters name their author for ever.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from uuid import uuid4

from sqlalchemy import Connection, ForeignKey, Row, delete, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from quietcuff.record.database import Head, Practice, db, found_practice
from quietcuff.record.entries import without_nul
from quietcuff.record.errors import RecordError

ROLES = ("nurse", "veterinarian", "manager", "student")


class Person(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """Somebody who works at a practice. `login` is unique on this server, so that it alone finds the practice."""

    __tablename__ = "people"
    id: Mapped[str] = mapped_column(primary_key=True)
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), index=True)
    login: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    role: Mapped[str]
    password_hash: Mapped[str]
    made_at_ms: Mapped[int]
    left_at_ms: Mapped[int | None]


class Device(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """A phone. Only hashes of its cookie are here: a stolen copy of the database lets nobody in.

    The earlier cookie stays good until the newer one is used: the answer that carried the newer may have been lost.
    """

    __tablename__ = "devices"
    id: Mapped[str] = mapped_column(primary_key=True)
    practice: Mapped[str] = mapped_column(ForeignKey("practice.id"), index=True)
    person: Mapped[str] = mapped_column(ForeignKey("people.id"))
    token_sha: Mapped[str] = mapped_column(unique=True)
    earlier_token_sha: Mapped[str | None] = mapped_column(unique=True)
    made_at_ms: Mapped[int]
    contact_at_ms: Mapped[int]
    revoked_at_ms: Mapped[int | None]


class SignIn(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """One sign-in of a person on a phone; the row goes when it ends."""

    __tablename__ = "sign_ins"
    token_sha: Mapped[str] = mapped_column(primary_key=True)
    person: Mapped[str] = mapped_column(ForeignKey("people.id"), index=True)
    device: Mapped[str] = mapped_column(ForeignKey("devices.id"), index=True)
    made_at_ms: Mapped[int]
    used_at_ms: Mapped[int]


class SignInTries(db.Model):  # type: ignore[name-defined,misc]  # made at run time
    """Tries for one login from one network that have not succeeded. The key is a hash: people type passwords there."""

    __tablename__ = "sign_in_tries"
    key_sha: Mapped[str] = mapped_column(primary_key=True)
    tries: Mapped[int]
    began_at_ms: Mapped[int] = mapped_column(index=True)


@dataclass(frozen=True)
class NewPerson:
    """What is needed to add somebody; the password is hashed already."""

    login: str
    name: str
    role: str
    password_hash: str


def normal_login(login: str) -> str:
    """One form for what people take to be the same login: case, compatibility letters, spaces around; without U+0000."""
    return without_nul(unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", login).casefold()).strip())


def found(orm: Session, practice_name: str, person: NewPerson, now_ms: int) -> tuple[str, str]:
    """Adds a practice and its first person inside the caller's `writing()`; gives both ids.

    Raises RecordError `name_length`, `role_unknown`, `login_length` or `login_taken`.
    """
    if not 1 <= len(practice_name.strip()) <= 120:
        raise RecordError("name_length")
    practice = str(uuid4())
    found_practice(orm, practice, practice_name.strip(), now_ms)
    return practice, add_person(orm, practice, person, now_ms)


def add_person(orm: Session, practice: str, person: NewPerson, now_ms: int) -> str:
    """Adds somebody to a practice inside the caller's `writing()`; gives the id; raises RecordError as `found`."""
    login, name = normal_login(person.login), person.name.strip()
    if person.role not in ROLES:
        raise RecordError("role_unknown", role=person.role)
    if not 1 <= len(login) <= 80:
        raise RecordError("login_length")
    if not 1 <= len(name) <= 120:
        raise RecordError("name_length")
    if orm.execute(select(Person.id).where(Person.login == login)).first() is not None:
        raise RecordError("login_taken", login=login)
    made = str(uuid4())
    orm.execute(insert(Person).values(
        id=made, practice=practice, login=login, name=name, role=person.role,
        password_hash=person.password_hash, made_at_ms=now_ms, left_at_ms=None))
    return made


def by_login(connection: Connection, login: str) -> Row | None:
    """The person of this login who has not left: id, practice, password_hash; nobody: None."""
    query = select(Person.id, Person.practice, Person.password_hash)
    return connection.execute(
        query.where(Person.login == normal_login(login), Person.left_at_ms.is_(None))).one_or_none()


def introduce(connection: Connection, person: str) -> Row:
    """What a phone is told about its person and practice: names, role and the epoch of the journal."""
    return connection.execute(
        select(Practice.id.label("practice"), Practice.name.label("practice_name"), Person.id.label("person"),
               Person.name.label("person_name"), Person.role, Head.epoch)
        .join(Practice, Practice.id == Person.practice).join(Head, Head.practice == Practice.id)
        .where(Person.id == person)).one()


def leave(orm: Session, person: str, now_ms: int) -> None:
    """Ends somebody's membership: no sign-in any more, and those that run end now; letters and phones stay."""
    orm.execute(update(Person).where(Person.id == person).values(left_at_ms=now_ms))
    orm.execute(delete(SignIn).where(SignIn.person == person))
