"""Records and bundles of earlier builds are taken by this one, each letter once and unchanged.

The kept files are this project's own output; what they are held to is their own bytes (SHA-256) and counts.
"""

from __future__ import annotations

import hashlib
import json
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from quietcuff.record.database import found_practice, writing
from quietcuff.sync.receive import receive
from tests.databases import application, migrate_database
from tests.releases import kept

NOW_MS = 1_800_000_000_000


def test_there_is_one_of_each_resolved_order() -> None:
    """A folder that was emptied would let the others pass without looking at anything."""
    assert kept.names()[:1] == ["1-main-job"]


@pytest.mark.parametrize("name", kept.names())
def test_an_older_record_is_migrated_and_read_out_as_it_was(name: str, tmp_path: Path) -> None:
    kept.unpack(name, tmp_path)
    before = _journal(tmp_path / kept.RECORD)
    for command in ("migrate", "rebuild"):
        done = subprocess.run([sys.executable, "-m", "quietcuff.cli", command], capture_output=True, text=True, timeout=60,
                              env={"PATH": "/usr/bin:/bin", "QUIETCUFF_DATA": str(tmp_path)})
        assert done.returncode == 0, done.stdout + done.stderr
    assert _journal(tmp_path / kept.RECORD) == before
    assert all(hashlib.sha256(letter).hexdigest() == sha for _, sha, letter in before)
    assert len(before) >= 16


@pytest.mark.parametrize("name", kept.names())
def test_an_older_bundle_is_stored_letter_by_letter_with_the_same_result(name: str, tmp_path: Path) -> None:
    kept.unpack(name, tmp_path)
    bundle = (tmp_path / kept.BUNDLE).read_bytes()
    header = json.loads(bundle.split(b"\n", 1)[0])
    url = f"sqlite:///{tmp_path / 'new.sqlite'}"
    migrate_database(url)
    with application(url).app_context():
        with writing() as orm:
            found_practice(orm, header["practice"], "Kept", NOW_MS)
        lines = receive(header["practice"], header["device"], bundle, None, NOW_MS).splitlines()
    answers = [json.loads(line) for line in lines[1:]]
    assert [answer["answer"] for answer in answers] == ["stored"] * header["count"]
    assert not any("assessment" in answer for answer in answers), "a released rule set gives another result now"


def _journal(file: Path) -> list[tuple[int, str, bytes]]:
    with closing(sqlite3.connect(file)) as database:
        return database.execute("SELECT position, sha, letter FROM journal ORDER BY position").fetchall()
