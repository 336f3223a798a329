"""livez and readyz: ready means that a record could be filed now, on both databases."""

from __future__ import annotations

from pathlib import Path

import pytest
from sqlalchemy import text

from quietcuff.config import Settings
from quietcuff.record.database import db, writing
from tests.web.house import START_MS, House, Phone


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


def test_reading_goes_on_where_a_contact_cannot_be_noted(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """The lock is held by somebody else just when a phone's contact and use should be written down: the next one does."""
    monkeypatch.setattr("quietcuff.record.database.SQLITE_BUSY_MS", 50)
    phone = house.phone("nurse")
    house.clock.move(hours=2)
    with house.app.app_context():
        db.engine.dispose()
        with writing():
            assert phone.call("GET", "/api/1/me").status_code == 200
    assert house.rows("SELECT max(contact_at_ms) FROM devices") == [(START_MS,)]
    assert phone.call("GET", "/api/1/me").status_code == 200
    assert house.rows("SELECT contact_at_ms, used_at_ms FROM devices, sign_ins") == [(house.clock.ms, house.clock.ms)]
