"""Turns a password into what may be stored, and checks one: argon2id.

Knows no person and no table. Must not run more hashes at once than allowed: each takes 19 MiB or more.
"""

from __future__ import annotations

import secrets
import threading
import unicodedata

from argon2 import PasswordHasher, Type
from argon2.exceptions import InvalidHashError, VerificationError

PASSWORD_LEAST = 8  # NIST SP 800-63B: at least 8 characters, no rules of composition (from memory)
PASSWORD_MOST = 200  # as in wire/sign_in.1.json
# no letter that looks like another one on paper: i, l, o, 0, 1 are missing
_ALPHABET = "abcdefghjkmnpqrstuvwxyz23456789"
_GENERATED_GROUPS, _GENERATED_GROUP = 6, 4


class Passwords:
    """One way of hashing, and a limit on how many hashes run at once."""

    def __init__(self, memory_kib: int, passes: int, at_once: int) -> None:
        self._hasher = PasswordHasher(
            time_cost=passes, memory_cost=memory_kib, parallelism=1, hash_len=32, salt_len=16, type=Type.ID
        )
        self._room = threading.BoundedSemaphore(at_once)
        # checked when the login is unknown: the same work, so that time does not tell who has an account
        self._nobody = self.hash(secrets.token_urlsafe(24))

    def hash(self, password: str) -> str:
        """The text to store: algorithm, parameters, salt and hash."""
        with self._room:
            return self._hasher.hash(_normal(password))

    def fits(self, stored: str | None, password: str) -> bool:
        """Whether the password belongs to the stored hash; without one it does the same work and says no."""
        with self._room:
            try:
                return self._hasher.verify(stored or self._nobody, _normal(password)) and stored is not None
            except (VerificationError, InvalidHashError):
                return False

    def is_outdated(self, stored: str) -> bool:
        """Whether the hash was made with other parameters than today's."""
        return self._hasher.check_needs_rehash(stored)


def _normal(password: str) -> str:
    """One form for the same letters: keyboards differ in whether é is one character or two."""
    return unicodedata.normalize("NFC", password)


def generated_password() -> str:
    """24 characters in groups of four, about 118 bits: to be typed once from paper."""
    groups = ("".join(secrets.choice(_ALPHABET) for _ in range(_GENERATED_GROUP)) for _ in range(_GENERATED_GROUPS))
    return "-".join(groups)
