"""`python -m tests.releases.keep NAME`: puts this build's record, bundle and client into NAME.zip. Needs a built client."""

from __future__ import annotations

import sqlite3
import sys
import tempfile
import zipfile
from contextlib import closing
from datetime import date
from pathlib import Path

from demo.letters import bundles_of
from demo.play_in import fill
from tests.architecture.tree import ROOT
from tests.releases.kept import BUNDLE, CLIENT, HERE, RECORD

TODAY = date(2026, 9, 1)  # what the demo's times hang on


def keep(name: str) -> Path:
    """Writes the zip; refuses to write one that is there."""
    file = HERE / f"{name}.zip"
    if file.exists():
        raise SystemExit(f"{file.name} stands for what is out there: choose another name.")
    built = ROOT / "client" / "dist"
    with tempfile.TemporaryDirectory() as folder, zipfile.ZipFile(file, "x", zipfile.ZIP_DEFLATED, compresslevel=9) as out:
        data = Path(folder)
        fill(data, TODAY)
        with closing(sqlite3.connect(data / RECORD)) as database:
            practice, author = database.execute("SELECT practice, id FROM people").fetchone()
            database.execute("VACUUM INTO ?", (str(data / "copy"),))
        out.write(data / "copy", RECORD)
        out.writestr(BUNDLE, bundles_of(practice, author, TODAY)[0])  # one push: the bags, most animals, the first visits
        for one in sorted(built.rglob("*")):
            if one.is_file() and one.suffix not in (".br", ".gz"):
                out.write(one, f"{CLIENT}/{one.relative_to(built)}")
    return file


if __name__ == "__main__":
    print(keep(sys.argv[1]).name)
