"""Fixtures of the tests of `web`: a house on both databases, or on SQLite alone where the database is not the point."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from quietcuff.config import Settings
from quietcuff.record.database import db
from tests.databases import database_kind, database_url, postgresql, sqlite_template  # noqa: F401  (fixtures)
from tests.web.house import House


def built_client(folder: Path) -> Path:
    """A small client as a build leaves it: hashed assets, and compressed files beside what they were made of."""
    (folder / "assets").mkdir(parents=True)
    for name, content in {
        "index.html": b"<!doctype html><title>shell</title>", "sw.js": b"// worker", "manifest.webmanifest": b"{}",
        "assets/index-Ab3_x-9Z.js": b"export const a = 1;" * 20, "assets/index-Ab3_x-9Z.js.br": b"brotli bytes",
        "assets/index-Ab3_x-9Z.js.gz": b"gzip bytes", "assets/plain.css": b"body{}",
        "assets/index-Ab3_x-9Z.js.map": b"{}", ".hidden": b"no",
    }.items():
        (folder / name).write_bytes(content)
    (folder / "outside.txt").symlink_to("/etc/hostname")
    return folder


@pytest.fixture(scope="session")
def client_build(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of that client."""
    return built_client(tmp_path_factory.mktemp("client") / "dist")


def _open(settings: Settings) -> Iterator[House]:
    house = House(settings)
    yield house
    with house.app.app_context():
        db.session.remove()
        db.engine.dispose()


@pytest.fixture
def house(client_build: Path, sqlite_template: Path, tmp_path: Path) -> Iterator[House]:  # noqa: F811  (a fixture by its name)
    """On SQLite."""
    shutil.copy(sqlite_template, tmp_path / "house.sqlite")
    yield from _open(Settings(data=tmp_path, database=f"sqlite:///{tmp_path / 'house.sqlite'}", client=client_build))


@pytest.fixture(scope="module")
def still_house(
    client_build: Path, sqlite_template: Path, tmp_path_factory: pytest.TempPathFactory  # noqa: F811  (a fixture by its name)
) -> Iterator[House]:
    """On SQLite, one for a file of tests: for those that ask for what must change nothing."""
    folder = tmp_path_factory.mktemp("still")
    shutil.copy(sqlite_template, folder / "house.sqlite")
    yield from _open(Settings(data=folder, database=f"sqlite:///{folder / 'house.sqlite'}", client=client_build))


@pytest.fixture
def any_house(client_build: Path, database_url: str, tmp_path: Path) -> Iterator[House]:  # noqa: F811  (a fixture by its name)
    """On SQLite, then on PostgreSQL."""
    yield from _open(Settings(data=tmp_path, database=database_url, client=client_build))
