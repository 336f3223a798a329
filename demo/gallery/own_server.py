"""A server of the gallery's own on a free port, with the invented practice in a folder that goes away with it.

It must not touch the record of the demo that somebody looks at.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from demo.play_in import fill
from demo.serve import LOOPBACK, port_to_use, settings_of_the_demo

READY_WITHIN_S = 20
ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True)
class Served:
    """Where it answers, and the password of the demo's person."""

    url: str
    password: str


@contextmanager
def own_server(now: datetime) -> Iterator[Served]:
    """Serves a practice whose last visits lie in the week before that of `now`, by a clock that stands at `now` when it starts."""
    with tempfile.TemporaryDirectory() as folder:
        data = Path(folder)
        password = fill(data, now.date())
        port = port_to_use(0, LOOPBACK)
        by_ms = int((now.timestamp() - time.time()) * 1000)
        words = ["-m", "gunicorn", f"demo.gallery.own_app:moved_app({by_ms})", "-k", "gthread", "--threads", "8", "--no-control-socket"]
        with (data / "server.log").open("wb") as log:
            process = subprocess.Popen([sys.executable, *words, "-b", f"{LOOPBACK}:{port}"], stdout=log, stderr=log, cwd=ROOT,
                                       env=settings_of_the_demo(data, tls=False))
        try:
            _wait(f"http://{LOOPBACK}:{port}/readyz", data / "server.log")
            yield Served(f"http://localhost:{port}", password)
        finally:
            process.terminate()
            process.wait(10)


def _wait(address: str, log: Path) -> None:
    deadline = time.monotonic() + READY_WITHIN_S
    while time.monotonic() < deadline:
        try:
            with urllib.request.urlopen(address, timeout=2) as answer:
                if answer.status == 200:
                    return
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            time.sleep(0.05)
    raise SystemExit("the gallery's server did not start: " + log.read_text(encoding="utf-8")[-2000:])
