"""The settings: each with its type, its default and the reason for it. Read from the environment, prefix QUIETCUFF_.

The server refuses to start on a name it does not know (a misspelt setting would silently keep its default) and on a
value that would be unsafe. Limits that the phone must know as well are no settings: they stand in `wire/api.json`.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

PREFIX = "QUIETCUFF_"
_DATABASES = ("sqlite:///", "postgresql+psycopg://")
# setting → lowest and highest value allowed, and why not beyond
_BOUNDS = {
    "device_days": (30, 365, "a phone may lie in a drawer for weeks; a cookie lives 400 days at most in a browser"),
    "sign_in_days": (1, 90, "a stolen sign-in must end by itself"),
    "sign_in_idle_hours": (1, 168, "longer would let a phone lost on Monday read the record on the next Monday"),
    "sign_in_failures": (3, 100, "100 consecutive failures is the most that published guidance allows"),
    "sign_in_window_minutes": (5, 1440, "shorter slows nobody down, longer keeps people out for a day"),
    "argon2_memory_kib": (19_456, 1_048_576, "below 19 MiB the hash is weaker than the OWASP recommendation"),
    "argon2_passes": (2, 20, "below 2 passes the hash is weaker than the OWASP recommendation"),
    "hashes_at_once": (1, 64, "each takes its own memory"),
    "proxies": (0, 5, "each hop trusted in error lets a stranger choose the address that is counted"),
}


class SettingsRefused(Exception):
    """The server must not start like this; the message names the setting and what to do."""


@dataclass(frozen=True)
class Settings:
    """Everything that may differ from one installation to the next."""

    data: Path = Path(".data")
    """Folder of the embedded database. Beside where it is started, so that a first try leaves nothing elsewhere."""

    database: str = ""
    """SQLAlchemy URL; empty = SQLite in `data`. A practice of a few phones needs no database server."""

    client: Path | None = None
    """Folder of the built client; none = the one packaged, else client/dist of the repository."""

    tls: bool = False
    """Whether people reach us by https. Only then is HSTS sent: on http://localhost it would lock the browser out."""

    proxies: int = 0
    """How many proxies stand before us. 0: a network address written into a header by a stranger counts for nothing."""

    device_days: int = 180
    """Handing in works this long after a phone's last contact: half a year in a drawer loses nothing."""

    sign_in_days: int = 30
    """A sign-in ends after this at the latest: the longest that published guidance allows for a single factor."""

    sign_in_idle_hours: int = 12
    """A sign-in ends when it was not used for this long: one sign-in covers a working day, the next morning asks again,
    and a phone lost overnight reads nothing more from the server. Handing in never asks, so nothing waits for it."""

    sign_in_failures: int = 5
    """Wrong passwords before a pause, for one login from one network."""

    sign_in_window_minutes: int = 15
    """How long these are counted; after it they are forgotten. No stranger can cause a permanent lock."""

    argon2_memory_kib: int = 19_456
    """Memory of one password hash: 19 MiB, the OWASP recommendation for argon2id with 2 passes and 1 lane."""

    argon2_passes: int = 2
    """Passes of one password hash, see above."""

    hashes_at_once: int = 2
    """Password hashes computed at the same time in one process: signing in cannot use up the machine's memory."""

    def __post_init__(self) -> None:
        for name, (lowest, highest, why) in _BOUNDS.items():
            if not lowest <= getattr(self, name) <= highest:
                raise SettingsRefused(f"{PREFIX}{name.upper()} must be {lowest} to {highest}: {why}.")
        if self.database and not self.database.startswith(_DATABASES):
            raise SettingsRefused(f"{PREFIX}DATABASE must begin with {' or '.join(_DATABASES)}.")

    @property
    def database_url(self) -> str:
        """The URL in use; SQLite's file is named by its whole path, so that the working folder does not matter."""
        return self.database or f"sqlite:///{self.data.resolve() / 'quietcuff.sqlite'}"


def settings_from_environment(environment: Mapping[str, str] | None = None) -> Settings:
    """Reads QUIETCUFF_… ; raises SettingsRefused for an unknown name, a value of the wrong form or an unsafe one."""
    values = os.environ if environment is None else environment
    if values.get("FLASK_DEBUG", "0") not in ("", "0", "false", "no"):
        raise SettingsRefused("FLASK_DEBUG is on: its error pages run code for whoever sees them. Unset it.")
    known = {f"{PREFIX}{field.name.upper()}": field for field in fields(Settings)}
    given: dict[str, Any] = {}
    for name in sorted(values):
        if not name.startswith(PREFIX):
            continue
        if name not in known:
            raise SettingsRefused(f"{name} is no setting. Known: {', '.join(sorted(known))}.")
        given[known[name].name] = _read(name, values[name], str(known[name].type))
    return Settings(**given)


def _read(name: str, text: str, kind: str) -> Any:
    readers: dict[str, Callable[[str], Any]] = {
        "str": str, "int": _whole_number, "bool": _yes_or_no, "Path": Path, "Path | None": Path,
    }
    try:
        return readers[kind](text)
    except ValueError as error:
        raise SettingsRefused(f"{name} {error}.") from error


def _whole_number(text: str) -> int:
    if not (text.isascii() and text.isdigit()):
        raise ValueError("must be a whole number")
    return int(text)


def _yes_or_no(text: str) -> bool:
    if text not in ("yes", "no"):
        raise ValueError("must be yes or no")
    return text == "yes"
