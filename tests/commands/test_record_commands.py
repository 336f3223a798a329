"""The commands that work on a record: `rebuild` says by its exit code what it found, and `found` asks for a password twice."""

from __future__ import annotations

import getpass
import io
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from quietcuff import cli

WHOSE = ("--practice", "Hill", "--name", "Ada Hill", "--login", "ada", "--role", "veterinarian")


def command(data: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Runs `quietcuff` as a person would, nobody at the keyboard."""
    return subprocess.run([sys.executable, "-m", "quietcuff.cli", *words], capture_output=True, text=True, timeout=60,
                          stdin=subprocess.DEVNULL, env={"PATH": "/usr/bin:/bin", "QUIETCUFF_DATA": str(data)})


def test_rebuild_tells_a_difference_by_its_exit_code(tmp_path: Path) -> None:
    """0 and a line a table; 1 after a row that no letter states was planted; then it is mended, and 0 again."""
    assert command(tmp_path, "migrate").returncode == 0
    assert command(tmp_path, "found", *WHOSE).returncode == 0
    clean = command(tmp_path, "rebuild")
    assert (clean.returncode, clean.stdout.count(": 0 rows, 0 differed\n")) == (0, 3), clean.stderr
    with closing(sqlite3.connect(tmp_path / "quietcuff.sqlite")) as database, database:
        database.execute("INSERT INTO patients (practice, patient, position, amended, author, species, name)"
                         " SELECT id, 'planted', 1, 0, 'a', 'cat', 'Planted' FROM practice")
    planted = command(tmp_path, "rebuild")
    assert (planted.returncode, planted.stdout.count(": 0 rows, 1 differed ")) == (1, 1), planted.stderr
    assert command(tmp_path, "rebuild").returncode == 0


@pytest.mark.parametrize("words", [("found", *WHOSE), ("rebuild",)], ids=["found", "rebuild"])
def test_before_the_first_migration_it_says_what_to_do(tmp_path: Path, words: tuple[str, ...]) -> None:
    """No traceback, and nothing founded: exit 2 and one sentence."""
    done = command(tmp_path, *words)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == "The database has not the tables of this version. Run `quietcuff migrate` first.\n"


def test_two_different_passwords_at_the_keyboard_found_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nobody sees what they type: a slip would lock the first person out, and there is no second one to ask."""
    keyboard = io.StringIO()
    keyboard.isatty = lambda: True  # type: ignore[method-assign]  # stands in for a terminal
    typed = iter(("four quiet little words", "four quiet little swords"))
    monkeypatch.setattr(sys, "stdin", keyboard)
    monkeypatch.setattr(getpass, "getpass", lambda _prompt: next(typed))
    monkeypatch.setenv("QUIETCUFF_DATA", str(tmp_path / "data"))
    assert cli.main(["found", *WHOSE]) == 2
    assert "differ" in capsys.readouterr().err
    assert not (tmp_path / "data").exists()
