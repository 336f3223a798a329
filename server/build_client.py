"""Puts the built client and the shared files into the wheel: `pip install .` runs this hook of the hatchling build.

It answers which files go where in the package. It must not build or copy anything for an editable install: there the
application reads client/dist and shared_schemas in the repository, and a copy beside them would grow stale.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

sys.path.insert(0, str(Path(__file__).parent))  # hatchling loads this file by its path, outside any package
import node  # noqa: E402  (it can only be found after the line above)

# in the repository → in the wheel, under quietcuff/
FOLDERS = {"client/dist": "static", "client/dist-engine": "engine", "shared_schemas": "shared_schemas"}
LEAST = {"static/index.html", "static/sw.js", "engine/engine.mjs", "shared_schemas/rule.schema.json"}


class BuildClient(BuildHookInterface):  # type: ignore[misc]  # hatchling's base class is generic over its configuration
    """Hatchling finds this class by its base class."""

    def dependencies(self) -> list[str]:
        """What the build environment needs beyond hatchling: Node from its wheel where the machine has none fit for use."""
        return [] if self.target_name != "wheel" or node.machine_has_node() else [node.WHEEL]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Builds the client and includes every built file; `version` is "editable" or "standard"."""
        if version == "editable" or self.target_name != "wheel":
            return
        client = Path(self.root) / "client"
        node.install_packages(client, dict(os.environ))
        node.build(client, dict(os.environ))
        build_data["force_include"].update(files_of_the_wheel(Path(self.root)))


def files_of_the_wheel(root: Path) -> dict[str, str]:
    """Every such file and its place in the wheel; raises where something is missing that the server needs."""
    files = {
        str(file): f"{target}/{file.relative_to(root / source).as_posix()}"
        for source, target in FOLDERS.items()
        for file in sorted((root / source).rglob("*"))
        if file.is_file()
    }
    missing = LEAST - set(files.values())
    if missing:
        raise RuntimeError(f"{sorted(missing)} are not there; a wheel without them could not serve")
    return {file: f"quietcuff/{place}" for file, place in files.items()}
