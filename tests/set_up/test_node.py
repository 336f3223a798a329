"""Which Node will do. The least version is what the client's build tool demands in its own package file."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from server import node
from tests.architecture.tree import ROOT


def put(folder: Path, name: str, printed: str) -> None:
    """A program that prints one line."""
    program = folder / name
    program.write_text(f"#!/bin/sh\necho {printed}\n")
    program.chmod(0o755)


@pytest.mark.parametrize(
    ("printed", "will_do"),
    [("v18.20.4", False), ("v20.18.9", False), ("v20.19.0", True), ("v22.0.0", True), ("v100.1.0", True), ("nonsense", False)],
)
def test_the_version_decides(tmp_path: Path, printed: str, will_do: bool) -> None:
    """Below, at and above the least version; compared as numbers, not as text."""
    put(tmp_path, "node", printed)
    put(tmp_path, "npm", "11.0.0")
    assert node.machine_has_node(str(tmp_path)) is will_do


def test_node_without_npm_will_not_do(tmp_path: Path) -> None:
    """Debian can install the one without the other."""
    put(tmp_path, "node", "v22.0.0")
    assert not node.machine_has_node(str(tmp_path))


def test_the_client_asks_for_the_same() -> None:
    """package.json of the client states the version that is looked for here."""
    package = json.loads((ROOT / "client" / "package.json").read_text(encoding="utf-8"))
    assert package["engines"]["node"] == ">={}.{}".format(*node.LEAST_VERSION)
