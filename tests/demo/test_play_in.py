"""The demo is played in by the real way of receiving: every letter stored, once, and each verdict of the rules to be seen.

The animals are invented, so nothing here says that a figure is right; only that the record takes what a phone would send.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from demo.letters import letters, bundle_of, id_of
from demo.play_in import fill
from demo.serve import settings_of_the_demo
from quietcuff.config import Settings

AUTHOR = "01950000-0000-7000-8000-000000000001"
PRACTICE = "01950000-0000-7000-8000-000000000002"


def rows_of(data: Path, question: str) -> list[tuple]:
    """Reads a demo's database past the server."""
    with closing(sqlite3.connect(data / "quietcuff.sqlite")) as database:
        return database.execute(question).fetchall()


def test_the_record_takes_every_letter_once(tmp_path: Path) -> None:
    """16 letters in, none laid aside, no result that differs from the one stated; a second time nothing is added."""
    password = fill(tmp_path)
    first = rows_of(tmp_path, "SELECT position, sha FROM journal ORDER BY position")
    assert len(first) == 16
    assert rows_of(tmp_path, "SELECT count(*) FROM tray") == [(0,)]
    assert rows_of(tmp_path, "SELECT count(*) FROM journal WHERE flags <> '' OR assessment IS NOT NULL") == [(0,)]
    assert fill(tmp_path) == password
    assert rows_of(tmp_path, "SELECT position, sha FROM journal ORDER BY position") == first


def test_the_same_people_give_the_same_bytes() -> None:
    """Nothing of the day or of chance is in a letter."""
    assert bundle_of(PRACTICE, AUTHOR) == bundle_of(PRACTICE, AUTHOR)


def test_each_kind_of_outcome_is_to_be_seen() -> None:
    """A first look shows what agrees, what does not, and what is not placed."""
    found = [letter["assessment"] for letter in letters(AUTHOR) if letter["kind"] == "measurement"]
    assert {one["sets"][one["result_set"]]["verdict"] for one in found} == {"steady", "falling", "scattered"}
    assert {one["firmness"] for one in found} == {"firm", "with_care", "not_placed"}
    assert {one.get("category") for one in found} == {None, "minimal", "low", "moderate", "high"}


def test_ids_are_version_7_uuids() -> None:
    """RFC 9562, 5.7: 48 bits of Unix milliseconds, version 0111, variant 10; the time is that of its example, A.6 (from memory)."""
    made = id_of("anything", 0x017F22E279B0)
    assert made.startswith("017f22e2-79b0-7")
    assert made[19] in "89ab"
    assert made == made.lower()


def test_a_real_record_is_out_of_reach(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Settings of a real server in the environment do not reach the demo's."""
    monkeypatch.setenv("QUIETCUFF_DATABASE", "postgresql+psycopg://real")
    seen = settings_of_the_demo(tmp_path, tls=False)
    assert {name: value for name, value in seen.items() if name.startswith("QUIETCUFF_")} == {"QUIETCUFF_DATA": str(tmp_path)}


def test_a_folder_with_another_record_is_left_alone(tmp_path: Path) -> None:
    """`--data .data` would play invented animals into the record of a real server, which lies there by default."""
    file = Path(Settings(data=tmp_path).database_url.removeprefix("sqlite:///"))
    file.write_bytes(b"a real record")
    with pytest.raises(SystemExit, match="not the demo's"):
        fill(tmp_path)
    assert [one.name for one in tmp_path.iterdir()] == [file.name]
    assert file.read_bytes() == b"a real record"
