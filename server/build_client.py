"""Puts the built client into the wheel: `pip install .` runs this hook of the hatchling build.

It answers which built files go where in the package. It must not build anything for an editable install: there the
application reads client/dist in the repository, which server/set_up.py keeps up to date.
"""
from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

# from client/ in the repository → to quietcuff/ in the wheel
BUILT_FOLDERS = {"dist": "static", "dist-engine": "engine"}
LEAST_BUILT = {"static/index.html", "static/sw.js", "engine/engine.mjs"}


class BuildClient(BuildHookInterface):  # type: ignore[misc]
    """Hatchling finds this class by its base class."""

    PLUGIN_NAME = "custom"

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Builds the client with npm and includes every built file; `version` is "editable" or "standard"."""
        if version == "editable" or self.target_name != "wheel":
            return
        client = Path(self.root) / "client"
        build_with_npm(client)
        included = {f"{target}/{file.relative_to(client / source).as_posix()}": file
                    for source, target in BUILT_FOLDERS.items()
                    for file in sorted((client / source).rglob("*")) if file.is_file()}
        missing = LEAST_BUILT - set(included)
        if missing:
            raise RuntimeError(f"the client's build left out {sorted(missing)}; a wheel without them would not serve")
        build_data["force_include"].update({str(file): f"quietcuff/{place}" for place, file in included.items()})


def build_with_npm(client: Path) -> None:
    """Runs `npm ci` and `npm run build` in the client's folder; raises with one clear sentence where there is no Node."""
    npm = shutil.which("npm")
    if npm is None:
        raise RuntimeError("Building this package needs Node 20.19 or newer with npm on the PATH.")
    for words in (["ci"], ["run", "build"]):
        subprocess.run([npm, *words], cwd=client, check=True)
