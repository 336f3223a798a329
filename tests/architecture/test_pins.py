"""Every version is pinned, in one number, and no lock file names where a package came from.

An address in a lock file ties every reader to one registry; a version that floats makes yesterday's proof about another program.
"""

from __future__ import annotations

import json
import re
import tomllib
from typing import Any

from server import node
from tests.architecture.tree import ROOT

PINNED = re.compile(r"^(?P<name>[a-z0-9._\-]+)(?:\[[a-z]+\])?==(?P<version>[0-9][0-9a-z.]*)$")
EXACT = re.compile(r"^\d+\.\d+\.\d+$")


def constraints() -> dict[str, str]:
    """Name → version of server/constraints.txt."""
    lines = (ROOT / "server" / "constraints.txt").read_text(encoding="utf-8").splitlines()
    pins = [PINNED.match(line) for line in lines if line and not line.startswith("#")]
    assert all(pins), "a line of constraints.txt is no exact pin"
    return {pin["name"]: pin["version"] for pin in pins if pin}


def test_python_packages_are_pinned_alike() -> None:
    """pyproject.toml and constraints.txt name the same version of each direct dependency, and so does server/node.py."""
    described = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    project = described["project"]
    direct = [*described["build-system"]["requires"], *project["dependencies"],
              *project["optional-dependencies"]["test"], node.WHEEL]
    pins, known = [PINNED.match(line) for line in direct], constraints()
    assert all(pins), direct
    assert [pin.group() for pin in pins if pin and known.get(pin["name"]) != pin["version"]] == []


def test_client_packages_are_pinned() -> None:
    """package.json asks for exact versions only."""
    package = json.loads((ROOT / "client" / "package.json").read_text(encoding="utf-8"))
    asked = {**package["dependencies"], **package["devDependencies"]}
    assert [f"{name} {version}" for name, version in asked.items() if not EXACT.match(version)] == []


def test_lock_files_carry_no_address() -> None:
    """No `resolved` in the client's lock; its only addresses are where a maintainer may be paid."""
    lock = json.loads((ROOT / "client" / "package-lock.json").read_text(encoding="utf-8"))
    named = [name for name, entry in lock["packages"].items() if "resolved" in entry or _addresses(entry)]
    assert named == []
    assert "://" not in (ROOT / "server" / "constraints.txt").read_text(encoding="utf-8")


def _addresses(entry: dict[str, Any]) -> bool:
    return "://" in json.dumps({key: value for key, value in entry.items() if key != "funding"})
