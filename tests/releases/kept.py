"""Keeps what this build would leave in the world, and unpacks what earlier ones left.

Run by hand when an order of work is done: `.venv/bin/python -m tests.releases.keep NAME`. A kept zip is never made anew: it stands for
phones and databases that are out there. The record is the demo's, with no password that anybody knows.
"""

from __future__ import annotations

import zipfile
from pathlib import Path

HERE = Path(__file__).parent
RECORD, BUNDLE, CLIENT = "quietcuff.sqlite", "letters.ndjson", "client"


def names() -> list[str]:
    """The kept builds, oldest name first."""
    return sorted(file.stem for file in HERE.glob("*.zip"))


def unpack(name: str, folder: Path) -> Path:
    """Lays a kept build out in a folder: `quietcuff.sqlite`, `letters.ndjson` and `client/`."""
    with zipfile.ZipFile(HERE / f"{name}.zip") as kept:
        kept.extractall(folder)
    return folder
