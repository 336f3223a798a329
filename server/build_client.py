"""Puts the built client into the wheel: `pip install .` runs this hook of the hatchling build.

It answers which built files go where in the package. It must not build anything for an editable install: there the
application reads client/dist in the repository, which server/set_up.py keeps up to date.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

sys.path.insert(0, str(Path(__file__).parent))  # hatchling loads this file by its path, outside any package
import node  # noqa: E402  (it can only be found after the line above)

# from client/ in the repository → to quietcuff/ in the wheel
BUILT_FOLDERS = {"dist": "static", "dist-engine": "engine"}
LEAST_BUILT = {"static/index.html", "static/sw.js", "engine/engine.mjs"}


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
        build_data["force_include"].update(built_files(client))


def built_files(client: Path) -> dict[str, str]:
    """Every built file and its place in the wheel; raises where the client's build left out what the server needs."""
    files = {
        str(file): f"{target}/{file.relative_to(client / source).as_posix()}"
        for source, target in BUILT_FOLDERS.items()
        for file in sorted((client / source).rglob("*"))
        if file.is_file()
    }
    missing = LEAST_BUILT - set(files.values())
    if missing:
        raise RuntimeError(f"the client's build left out {sorted(missing)}; a wheel without them could not serve")
    return {file: f"quietcuff/{place}" for file, place in files.items()}
