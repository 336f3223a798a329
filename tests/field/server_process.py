"""A real server for the field tests: gunicorn in a process group of its own, on one port and one folder of data.

It can be killed as a power cut would kill it (SIGKILL to the whole group) and started again on the same port and data. It must not
reach into the server's code: what is true is read from the database file.
"""

import atexit
import os
import shutil
import signal
import socket
import sqlite3
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from contextlib import closing
from functools import cache
from pathlib import Path

PASSWORD = "a pass phrase for the field tests"
DATABASE = "quietcuff.sqlite"


def free_port() -> int:
    """A TCP port on loopback that was free a moment ago."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class ServerProcess:
    """gunicorn on loopback. `data` is its folder, `client` another build of the client than the usual; `url` the origin a phone sees."""

    def __init__(self, data: Path, client: Path | None = None) -> None:
        self.data = data
        self.port = free_port()
        self.url = f"http://localhost:{self.port}"
        self.process: subprocess.Popen[bytes] | None = None
        self.environment = _environment(data)
        if client is not None:
            self.environment["QUIETCUFF_CLIENT"] = str(client)

    def found(self, login: str = "ada", role: str = "veterinarian", practice: str = "Field practice") -> None:
        """A migrated database with a practice of one person; where there is a database already, one practice more in it."""
        if self.database.exists():
            _found(self.data, login, role, practice)
        else:
            shutil.copy(_founded_once(login, role, practice), self.database)

    def start(self) -> int:
        """Start and wait until it answers. Returns gunicorn's process id."""
        with (self.data / "gunicorn.log").open("ab") as log:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "gunicorn", "quietcuff.app:create_app()", "-k", "gthread", "-w", "2", "--threads", "8",
                 "--no-control-socket", "-b", f"127.0.0.1:{self.port}"],
                env=self.environment, stdout=log, stderr=log, start_new_session=True)
        self._wait_until_ready()
        return self.process.pid

    def _wait_until_ready(self) -> None:
        deadline = time.monotonic() + 20
        while time.monotonic() < deadline:
            try:
                with urllib.request.urlopen(f"http://127.0.0.1:{self.port}/readyz", timeout=2) as answer:
                    if answer.status == 200:
                        return
            except (urllib.error.URLError, ConnectionError, TimeoutError):
                time.sleep(0.05)
        raise AssertionError("gunicorn did not become ready: " + (self.data / "gunicorn.log").read_text()[-2000:])

    def kill(self) -> int | None:
        """SIGKILL to the whole process group, as a power cut. Returns the process id that died."""
        if self.process is None:
            return None
        pid = self.process.pid
        os.killpg(pid, signal.SIGKILL)
        self.process.wait(10)
        self.process = None
        return pid

    def rows(self, question: str, *values: object) -> list[tuple]:
        """Read the database file itself, past the server."""
        with closing(sqlite3.connect(f"file:{self.database}?mode=ro", uri=True)) as database:
            return database.execute(question, values).fetchall()

    @property
    def database(self) -> Path:
        """The one SQLite file in the data folder."""
        return self.data / DATABASE


@cache
def _founded_once(login: str, role: str, practice: str) -> Path:
    """A database made by the real commands, once in a process of tests, to be copied: the commands take longer than many a test."""
    data = Path(tempfile.mkdtemp(prefix="quietcuff-founded-"))
    atexit.register(shutil.rmtree, data, ignore_errors=True)
    _command(data, "migrate")
    _found(data, login, role, practice)
    assert [file.name for file in data.glob(f"{DATABASE}*")] == [DATABASE], "a copy of the one file would not be the whole database"
    return data / DATABASE


def _found(data: Path, login: str, role: str, practice: str) -> None:
    password_file = data / "password"
    password_file.write_text(PASSWORD + "\n", encoding="utf-8")
    _command(data, "found", "--practice", practice, "--name", "Ada Field", "--login", login,
             "--role", role, "--password-file", str(password_file))


def _command(data: Path, *words: str) -> None:
    done = subprocess.run([sys.executable, "-m", "quietcuff.cli", *words], env=_environment(data),
                          capture_output=True, text=True, timeout=60)
    assert done.returncode == 0, f"quietcuff {words[0]} ended with {done.returncode}: {done.stdout}{done.stderr}"


def _environment(data: Path) -> dict[str, str]:
    """This machine's, without settings of a server that happens to be there."""
    outside = {name: value for name, value in os.environ.items() if not name.startswith("QUIETCUFF_")}
    return {**outside, "QUIETCUFF_DATA": str(data)}
