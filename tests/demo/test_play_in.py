"""The demo is played in by the real way of receiving: every letter stored, once, and nothing in it hangs on chance.

The animals are invented, so nothing here says that a figure is right; only that the record takes what a phone would send.
What the awkward animals are there for is in test_practice.py.
"""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from demo import play_in
from demo.letters import bundles_of, id_of, letters
from demo.play_in import fill
from demo.serve import settings_of_the_demo
from quietcuff.config import Settings

AUTHOR = "01950000-0000-7000-8000-000000000001"
PRACTICE = "01950000-0000-7000-8000-000000000002"
TODAY = date(2026, 3, 4)
LETTERS = 185 + 41 + 2  # measurements, animals with one written anew, bags


def rows_of(data: Path, question: str) -> list[tuple]:
    """Reads a demo's database past the server."""
    with closing(sqlite3.connect(data / "quietcuff.sqlite")) as database:
        return database.execute(question).fetchall()


def test_the_record_takes_every_letter_once(tmp_path: Path) -> None:
    """All letters in, none laid aside, no result that differs from the one stated; a second time nothing is added."""
    password = fill(tmp_path, TODAY)
    first = rows_of(tmp_path, "SELECT position, sha FROM journal ORDER BY position")
    assert len(first) == LETTERS
    assert rows_of(tmp_path, "SELECT count(*) FROM tray") == [(0,)]
    assert rows_of(tmp_path, "SELECT count(*) FROM journal WHERE flags <> '' OR assessment IS NOT NULL") == [(0,)]
    assert [rows_of(tmp_path, f"SELECT count(*) FROM {table}")[0][0] for table in ("patients", "measurements", "bags")] == [40, 185, 2]
    assert fill(tmp_path, date(2027, 1, 1)) == password
    assert rows_of(tmp_path, "SELECT position, sha FROM journal ORDER BY position") == first


def test_cut_short_it_is_filled_up_with_the_same_letters(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """After the first bundle the machine goes off; a week later the rest is handed in as it would have been."""
    hand_in, calls = play_in._hand_in, []

    def once(practice: str, body: bytes) -> None:
        if calls:
            raise KeyboardInterrupt
        calls.append(body)
        hand_in(practice, body)

    with monkeypatch.context() as cut, pytest.raises(KeyboardInterrupt):
        cut.setattr(play_in, "_hand_in", once)
        fill(tmp_path, TODAY)
    assert rows_of(tmp_path, "SELECT count(*) FROM journal") == [(100,)]
    fill(tmp_path, date(2026, 3, 11))
    [(practice, author)] = rows_of(tmp_path, "SELECT practice, id FROM people")
    lines = b"".join(bundles_of(practice, author, TODAY)).splitlines()
    ids = [json.loads(line)["id"] for line in lines if b'"kind":' in line]
    assert rows_of(tmp_path, "SELECT id FROM journal ORDER BY position") == [(one,) for one in ids]
    assert not (tmp_path / "playing_in").exists()
    assert len(ids) == LETTERS


def test_the_same_people_and_day_give_the_same_bytes() -> None:
    """Nothing of chance is in a letter; nothing of the weekday either."""
    assert bundles_of(PRACTICE, AUTHOR, TODAY) == bundles_of(PRACTICE, AUTHOR, date(2026, 3, 8))


def test_another_week_moves_the_times_and_no_reading() -> None:
    """What is measured does not hang on the day of playing in; ages and days do."""
    def read(today: date) -> list[list]:
        return [[one["readings"] for one in letter["body"]["sets"]] for letter in letters(AUTHOR, today) if letter["kind"] == "measurement"]

    assert read(TODAY) == read(date(2027, 8, 18))


def test_no_time_lies_ahead() -> None:
    """Played in on a Monday just after midnight, nothing was filed later than that, and nothing is older than 105 weeks and a day."""
    monday_ms = 1_772_409_600_000  # 2026-03-02T00:00Z
    at_ms = [letter["made_at_ms"] for letter in letters(AUTHOR, date(2026, 3, 2))]
    assert max(at_ms) < monday_ms
    assert min(at_ms) >= monday_ms - (105 * 7 + 1) * 86_400_000


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
