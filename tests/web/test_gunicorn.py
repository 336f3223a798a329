"""The real server: gunicorn on a free port, ended by SIGKILL like a power cut, begun again; nothing answered is lost.

Runs the documented command line; talks to it with the standard library alone.
"""

from __future__ import annotations

import http.client
import json
import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.sync.letters import Phone as Letters
from tests.sync.letters import answers, bundle
from tests.web.house import HEADERS, NDJSON, OURS, PASSWORD


def free_port() -> int:
    """A port that was free a moment ago."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Server:
    """gunicorn in a process group of its own."""

    def __init__(self, data: Path) -> None:
        self.port = free_port()
        self.environment = {"PATH": os.environ["PATH"], "QUIETCUFF_DATA": str(data)}
        self.log = data / "log"
        (data / "password").write_text(PASSWORD, encoding="utf-8")
        self.command("migrate")
        self.command("found", "--practice", "Hill", "--name", "Ada", "--login", "ada", "--role", "nurse",
                     "--password-file", str(data / "password"))
        self.start()

    def command(self, *words: str) -> None:
        """One `quietcuff` command that must go well."""
        subprocess.run([sys.executable, "-m", "quietcuff.cli", *words], env=self.environment, check=True, timeout=60,
                       capture_output=True)

    def start(self) -> None:
        """Starts it and waits until it is ready."""
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "gunicorn", "quietcuff.app:create_app()", "-k", "gthread", "-w", "2",
                 "--threads", "8", "--no-control-socket", "-b", f"127.0.0.1:{self.port}"],
                env=self.environment, stdout=log, stderr=log, start_new_session=True)
        until = time.monotonic() + 30
        while True:
            try:
                if self.call("GET", "/readyz")[0] == 200:
                    return
            except OSError:
                time.sleep(0.05)
            assert time.monotonic() < until and self.process.poll() is None, self.log.read_text()

    def kill(self) -> None:
        """SIGKILL to the whole group."""
        if self.process.poll() is None:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait(10)

    def call(self, method: str, path: str, body: bytes | None = None, **headers: str) -> tuple[int, bytes, list]:
        """One request on a connection of its own: status, body, headers."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=20)
        try:
            connection.request(method, path, body, {name.replace("_", "-"): value for name, value in headers.items()})
            answer = connection.getresponse()
            return answer.status, answer.read(), answer.getheaders()
        finally:
            connection.close()


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """A founded practice, served to all tests of this file: starting takes seconds."""
    running = Server(tmp_path_factory.mktemp("gunicorn"))
    yield running
    running.kill()


def test_killed_and_started_again(server: Server) -> None:
    """Three rounds of push, answer, SIGKILL at once, start: what was answered as stored is there, in its place."""
    status, told, headers = server.call(
        "POST", "/api/1/sign-in", json.dumps({"login": "ada", "password": PASSWORD}).encode(),
        Content_Type="application/json", **OURS)
    assert status == 200
    cookies = "; ".join(value.partition(";")[0] for name, value in headers if name == "Set-Cookie")
    practice, letters, stored = json.loads(told)["practice"], Letters(), {}
    for _ in range(3):
        body = bundle(letters.pairs(*(letters.patient() for _ in range(5))))
        status, lines, _ = server.call("POST", f"/api/1/practices/{practice}/push", body, Cookie=cookies,
                                       Content_Type=NDJSON, **OURS)
        server.kill()
        assert status == 200
        stored |= {line["id"]: line["position"] for line in answers(lines)[1] if line["answer"] == "stored"}
        server.start()
    assert sorted(stored.values()) == list(range(1, 16))
    status, page, _ = server.call("GET", f"/api/1/practices/{practice}/pull", Cookie=cookies)
    lines = page.splitlines()[1:]
    there = {json.loads(letter)["id"]: json.loads(envelope)["position"]
             for envelope, letter in zip(lines[::2], lines[1::2], strict=True)}
    assert status == 200 and there == stored


def test_headers_through_the_real_server(server: Server) -> None:
    """On a page, an error and a body cut off by its size, sent in chunks as well."""
    for method, path, body, more in (
        ("GET", "/livez", None, {}), ("GET", "/nothing", None, {}), ("GET", "/api/1/me", None, {}),
        ("POST", "/api/1/sign-in", b"x" * 20_000, {**OURS, "Content_Type": "application/json"}),
    ):
        _, _, headers = server.call(method, path, body, **more)
        sent = dict(headers)
        assert {name: sent.get(name) for name in HEADERS} == HEADERS, path


def test_a_body_in_chunks_is_limited(server: Server) -> None:
    """No declared length, one byte too many: 413 with a code."""
    connection = http.client.HTTPConnection("127.0.0.1", server.port, timeout=20)
    connection.request("POST", "/api/1/sign-in", iter([b" " * 16_000, b" " * 385]),
                       {**OURS, "Content-Type": "application/json"}, encode_chunked=True)
    answer = connection.getresponse()
    assert answer.status == 413 and json.loads(answer.read())["code"] == "too_large"
    connection.close()


def test_gunicorn_does_not_start_on_settings_refused(tmp_path: Path) -> None:
    """A misspelt setting stops the start, with its name in the log."""
    done = subprocess.run(
        [sys.executable, "-m", "gunicorn", "quietcuff.app:create_app()", "-w", "1", "--no-control-socket", "-b",
         f"127.0.0.1:{free_port()}"], capture_output=True, text=True, timeout=30,
        env={"PATH": os.environ["PATH"], "QUIETCUFF_DATA": str(tmp_path), "QUIETCUFF_DATABSE": "x"})
    assert done.returncode != 0 and "QUIETCUFF_DATABSE is no setting" in done.stderr
