"""The settings: defaults, what is refused at the start, and the commands `migrate` and `found`."""

from __future__ import annotations

import re
import sqlite3
import subprocess
import sys
from dataclasses import fields
from pathlib import Path

import pytest

from quietcuff.config import Settings, SettingsRefused, settings_from_environment
from tests.web.house import PASSWORD


def test_defaults() -> None:
    """Without a word in the environment it runs, on SQLite in its folder."""
    settings = settings_from_environment({"PATH": "/bin", "QUIET": "x"})
    assert settings == Settings() and settings.database_url.endswith("/.data/quietcuff.sqlite")


def test_every_setting_gives_its_reason() -> None:
    """A string under each field of the class."""
    source = (Path(__file__).parents[2] / "server" / "quietcuff" / "config.py").read_text(encoding="utf-8")
    for field in fields(Settings):
        assert re.search(rf'\n    {field.name}: .*\n    """.{{20}}', source), field.name


def test_values_are_read() -> None:
    """Each kind: text, folder, whole number, yes or no."""
    settings = settings_from_environment({
        "QUIETCUFF_DATA": "/tmp/x", "QUIETCUFF_DATABASE": "postgresql+psycopg://h/d", "QUIETCUFF_TLS": "yes",
        "QUIETCUFF_DEVICE_DAYS": "90", "QUIETCUFF_CLIENT": "/tmp/c"})
    assert settings == Settings(data=Path("/tmp/x"), database="postgresql+psycopg://h/d", tls=True, device_days=90,
                                client=Path("/tmp/c"))
    assert settings.database_url == "postgresql+psycopg://h/d"


@pytest.mark.parametrize(("name", "value"), [
    ("QUIETCUFF_DATABSE", "x"), ("QUIETCUFF_", "x"), ("QUIETCUFF_DATABASE_URL", "x"), ("QUIETCUFF_tls", "yes"),
    ("QUIETCUFF_TLS", "true"), ("QUIETCUFF_TLS", ""), ("QUIETCUFF_DEVICE_DAYS", "29"), ("QUIETCUFF_DEVICE_DAYS", "366"),
    ("QUIETCUFF_DEVICE_DAYS", "1e2"), ("QUIETCUFF_DEVICE_DAYS", "-1"), ("QUIETCUFF_DEVICE_DAYS", "٩٠"),
    ("QUIETCUFF_SIGN_IN_FAILURES", "101"), ("QUIETCUFF_SIGN_IN_IDLE_HOURS", "0"), ("QUIETCUFF_SIGN_IN_DAYS", "91"),
    ("QUIETCUFF_ARGON2_MEMORY_KIB", "19455"), ("QUIETCUFF_ARGON2_PASSES", "1"), ("QUIETCUFF_PROXIES", "6"),
    ("QUIETCUFF_DATABASE", "mysql://x"), ("QUIETCUFF_DATABASE", "sqlite://"), ("FLASK_DEBUG", "1")])
def test_refused(name: str, value: str) -> None:
    """An unknown name and an unsafe value stop the start, and the message names the setting."""
    with pytest.raises(SettingsRefused, match=name):
        settings_from_environment({name: value})


# --- commands ---------------------------------------------------------------------------------------------------------


def command(data: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Runs `quietcuff` as a person would, nobody at the keyboard."""
    return subprocess.run([sys.executable, "-m", "quietcuff.cli", *words], capture_output=True, text=True, timeout=60,
                          stdin=subprocess.DEVNULL, env={"PATH": "/usr/bin:/bin", "QUIETCUFF_DATA": str(data)})


def found(data: Path, login: str, *more: str) -> subprocess.CompletedProcess[str]:
    """Founds a practice."""
    whose = ("--practice", "Hill", "--name", "Ada Hill", "--login", login, "--role", "veterinarian")
    return command(data, "found", *whose, *more)


def test_migrate_and_found(tmp_path: Path) -> None:
    """Migrating twice is safe; a made password is printed once, another login refused while taken; it signs in."""
    from quietcuff.app import create_app
    from quietcuff.record.database import db
    from tests.web.house import Phone
    for _ in range(2):
        migrated = command(tmp_path, "migrate")
        assert migrated.returncode == 0, migrated.stderr
    made = found(tmp_path, "ada")
    printed = re.fullmatch(r"login: ada\npassword: ([a-z2-9]{4}(-[a-z2-9]{4}){5})\n", made.stdout)
    assert made.returncode == 0 and printed is not None, made.stderr
    taken = found(tmp_path, " ADA")
    assert taken.returncode == 2 and "taken" in taken.stderr and "Traceback" not in taken.stderr
    with sqlite3.connect(tmp_path / "quietcuff.sqlite") as database:
        assert database.execute("SELECT count(*) FROM practice").fetchone() == (1,), "nothing half founded"
    (tmp_path / "password").write_text(PASSWORD + "\n", encoding="utf-8")
    assert found(tmp_path, "bo", "--password-file", str(tmp_path / "password")).stdout == "login: bo\n"
    app = create_app(Settings(data=tmp_path))
    assert Phone(app.test_client()).sign_in("ada", printed[1]).status_code == 200
    assert Phone(app.test_client()).sign_in("bo", PASSWORD).status_code == 200
    with app.app_context():
        db.engine.dispose()


@pytest.mark.parametrize(("words", "reason"), [
    (("--password-file", "{}/none"), "cannot be read"), (("--password-file", "{}/short"), "8 to 200 characters")])
def test_a_password_that_cannot_be_used(tmp_path: Path, words: tuple[str, ...], reason: str) -> None:
    """Exit 2 and one sentence."""
    (tmp_path / "short").write_text("seven77\n", encoding="utf-8")
    refused = found(tmp_path, "ada", *(word.format(tmp_path) for word in words))
    assert refused.returncode == 2 and reason in refused.stderr and "Traceback" not in refused.stderr
    assert not (tmp_path / "quietcuff.sqlite").exists()
