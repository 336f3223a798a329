"""Builds of the client with a bug planted, to see that a check fails when what it guards against is there.

Each is a copy of the client and the shared schemas in a folder of its own, changed by exact text; a text that is not found is an error,
so that a plant can never silently be none.
"""

import os
import shutil
import subprocess
from pathlib import Path

REPOSITORY = Path(__file__).resolve().parents[2]


def built_with(folder: Path, changes: list[tuple[str, str, str]]) -> Path:
    """Copy, change (file, old, new) and build; returns the folder to serve. Paths are from the repository's top."""
    _copy(folder)
    for name, old, new in changes:
        file = folder / name
        text = file.read_text(encoding="utf-8")
        assert text.count(old) >= 1, f"{name} no longer holds {old!r}: plant it anew"
        file.write_text(text.replace(old, new), encoding="utf-8")
    done = subprocess.run(["npm", "run", "build"], cwd=folder / "client", capture_output=True, text=True, timeout=240,
                          env=os.environ)
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-3000:]
    return folder / "client" / "dist"


def _copy(folder: Path) -> None:
    kept_out = shutil.ignore_patterns("node_modules", "dist", "dist-engine", "dist-parts")
    shutil.copytree(REPOSITORY / "client", folder / "client", ignore=kept_out)
    shutil.copytree(REPOSITORY / "shared_schemas", folder / "shared_schemas")
    (folder / "client" / "node_modules").symlink_to(REPOSITORY / "client" / "node_modules")
