"""livez and readyz: ready means that a record could be filed now, on both databases."""

from __future__ import annotations

from pathlib import Path

import pytest
from sqlalchemy import text

from quietcuff.config import Settings
from quietcuff.record.database import db, writing
from tests.web.house import House, Phone


def test_ready(any_house: House) -> None:
    """And the trial write is undone."""
    phone = any_house.phone()
    assert phone.call("GET", "/livez").json == {"live": True}
    assert phone.call("GET", "/readyz").json == {"ready": True}
    assert any_house.rows("SELECT count(*) FROM sign_in_tries") == [(0,)]


def test_not_ready_before_the_newest_migration(any_house: House) -> None:
    """A database of an earlier version: 503 with the reason; alive all the same."""
    with any_house.app.app_context(), writing() as orm:
        orm.execute(text("UPDATE alembic_version SET version_num = '0001'"))
    answer = any_house.phone().call("GET", "/readyz")
    assert answer.status_code == 503 and answer.json is not None and answer.json["code"] == "migration_needed"
    assert any_house.phone().call("GET", "/livez").status_code == 200


def test_not_ready_when_the_journal_could_be_changed(any_house: House, database_kind: str) -> None:
    """A trigger of the journal is gone, as after a careless migration: 503 with the reason."""
    trigger = {"sqlite": "journal_no_update", "postgresql": "journal_append_only ON journal"}[database_kind]
    with any_house.app.app_context(), writing() as orm:
        orm.execute(text(f"DROP TRIGGER {trigger}"))
    answer = any_house.phone().call("GET", "/readyz")
    assert answer.status_code == 503 and answer.json is not None and answer.json["code"] == "journal_unguarded"


def test_not_ready_when_a_write_fails(any_house: House) -> None:
    """Reading works and writing does not: that is not ready."""
    with any_house.app.app_context(), writing() as orm:
        orm.execute(text("DROP TABLE sign_in_tries"))
    answer = any_house.phone().call("GET", "/readyz")
    assert answer.status_code == 503 and answer.json is not None and answer.json["code"] == "database_unready"


def test_an_empty_database_is_not_ready(tmp_path: Path) -> None:
    """Before the first migration."""
    from quietcuff.app import create_app
    app = create_app(Settings(data=tmp_path))
    answer = Phone(app.test_client()).call("GET", "/readyz")
    assert answer.status_code == 503 and answer.json is not None and answer.json["code"] == "migration_needed"
    with app.app_context():
        db.engine.dispose()


def test_a_locked_record_asks_to_come_again(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """Somebody else holds SQLite's lock: 503 with Retry-After, not a 500 (the wait is shortened for the test)."""
    monkeypatch.setattr("quietcuff.record.database.SQLITE_BUSY_MS", 50)
    with house.app.app_context():
        db.engine.dispose()
        with writing():
            answer = house.phone().sign_in("nurse")
    assert answer.status_code == 503 and answer.json is not None and answer.json["code"] == "record_busy"
    assert int(answer.headers["Retry-After"]) > 0
