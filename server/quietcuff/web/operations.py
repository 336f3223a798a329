"""Reads `wire/api.json`: which routes there are, who may use them, what they take and how much of it.

The document is what the guards obey, so that what is published and what is enforced cannot differ. A route that is not
in it cannot be used.
"""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from pathlib import Path

_FLASK_PART = re.compile(r"<(?:[^:<>]+:)?([^<>]+)>")


@dataclass(frozen=True)
class Operation:
    """One method of one route. `who` holds `anyone`, `device` or names of roles."""

    path: str
    method: str
    who: frozenset[str]
    media: frozenset[str]
    body_most_bytes: int


def read_operations(folder: Path) -> dict[tuple[str, str], Operation]:
    """Every operation of `folder`/wire/api.json by path and method; raises KeyError where one lacks `x-who`."""
    document = json.loads((folder / "wire" / "api.json").read_text(encoding="utf-8"))
    return {(path, method.upper()): _operation(path, method.upper(), described)
            for path, methods in document["paths"].items() for method, described in methods.items()
            if method != "parameters"}


def _operation(path: str, method: str, described: dict) -> Operation:
    return Operation(
        path=path, method=method, who=frozenset(described["x-who"]),
        media=frozenset(described.get("requestBody", {}).get("content", {})),
        body_most_bytes=described.get("x-body-most-bytes", 0))


def path_of(flask_rule: str) -> str:
    """The route as OpenAPI writes it: `<practice>` becomes `{practice}`."""
    return _FLASK_PART.sub(r"{\1}", flask_rule)
