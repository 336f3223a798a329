"""How fast does the server take measurements, and at what cost? Run by hand: python -m tests.bench.push [--help]

10,000 measurements of 8 readings in pushes of 100, gzip, over HTTP to gunicorn; every one checked, worked out again,
filed with its projections and durable (SQLite: synchronous FULL; PostgreSQL: fsync on) before it is answered. States
the machine. Decides nothing; what it prints is what was measured.
"""

from __future__ import annotations

import argparse
import gzip
import http.client
import json
import os
import platform
import signal
import socket
import subprocess
import sys
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from uuid import uuid4

from tests.databases import DURABLE, Cluster, migrate_database
from tests.sync.letters import Phone, answers, bundle

BATCH = 100
GZIP_LEVEL = 6
MEASUREMENTS_PER_ANIMAL = 10
START_LIMIT_S = 30
OURS = {"X-Quietcuff": "1", "Sec-Fetch-Site": "same-origin"}
PASSWORD = "four quiet words here"


@dataclass
class Server:
    """A running server and the processes whose time counts."""

    port: int
    process: subprocess.Popen[bytes]
    database_pid: int | None

    def cpu_s(self) -> float:
        """User and system seconds of gunicorn and its workers so far."""
        return _cpu_s_of_tree(self.process.pid)

    def database_cpu_s(self) -> float:
        """The same of PostgreSQL; SQLite works inside the server."""
        return _cpu_s_of_tree(self.database_pid) if self.database_pid else 0.0


def _cpu_s_of_tree(root: int) -> float:
    """Of a process, its living descendants, and its dead ones already waited for."""
    ticks, parents = {}, {}
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            fields = (folder / "stat").read_text().rsplit(")", 1)[1].split()
        except OSError:
            continue
        parents[int(folder.name)] = int(fields[1])
        ticks[int(folder.name)] = sum(int(field) for field in fields[11:15])
    family, grew = {root}, True
    while grew:
        grown = family | {child for child, parent in parents.items() if parent in family}
        grew, family = grown != family, grown
    return sum(ticks.get(pid, 0) for pid in family) / os.sysconf("SC_CLK_TCK")


@contextmanager
def serving(kind: str, folder: Path) -> Iterator[Server]:
    """gunicorn as it is started for real, on a database of its own, on a free port."""
    cluster = Cluster(DURABLE) if kind == "postgresql" else None
    url = cluster.url(cluster.new_database()) if cluster else f"sqlite:///{folder / 'bench.sqlite'}"
    environment = {**os.environ, "QUIETCUFF_DATABASE": url, "QUIETCUFF_DATA": str(folder)}
    migrate_database(url)
    _found(environment, folder)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "gunicorn", "quietcuff.app:create_app()", "-k", "gthread", "-w", "2"]
    command += ["--threads", "8", "--no-control-socket", "--log-level", "warning", "-b", f"127.0.0.1:{port}"]
    process = subprocess.Popen(command, env=environment, cwd=folder)
    try:
        _wait_until_ready(port)
        yield Server(port, process, cluster.process.pid if cluster else None)
    finally:
        process.send_signal(signal.SIGTERM)
        process.wait(START_LIMIT_S)
        if cluster:
            cluster.stop()


def _found(environment: dict[str, str], folder: Path) -> None:
    password = folder / "password"
    password.write_text(PASSWORD)
    command = [sys.executable, "-m", "quietcuff.cli", "found", "--practice", "Bench", "--name", "Bench Person"]
    command += ["--login", "bench", "--role", "veterinarian", "--password-file", str(password)]
    subprocess.run(command, env=environment, check=True, stdout=subprocess.DEVNULL)


def _wait_until_ready(port: int) -> None:
    until = time.monotonic() + START_LIMIT_S
    while time.monotonic() < until:
        try:
            connection = http.client.HTTPConnection("localhost", port, timeout=5)
            connection.request("GET", "/readyz")
            if connection.getresponse().status == http.HTTPStatus.OK:
                return
        except OSError:
            pass
        time.sleep(0.1)
    raise SystemExit("the server did not become ready")


class Line:
    """One phone's connection to the server, kept open."""

    def __init__(self, port: int) -> None:
        self.connection = http.client.HTTPConnection("localhost", port, timeout=60)
        headers = {**OURS, "Content-Type": "application/json"}
        body = json.dumps({"login": "bench", "password": PASSWORD, "device": str(uuid4())})
        self.connection.request("POST", "/api/1/sign-in", body, headers)
        answer = self.connection.getresponse()
        who = json.loads(answer.read())
        assert answer.status == http.HTTPStatus.OK, who
        cookies = [value.split(";")[0] for name, value in answer.getheaders() if name.lower() == "set-cookie"]
        self.address = f"/api/1/practices/{who['practice']}/push"
        self.headers = {**OURS, "Content-Type": "application/x-ndjson", "Cookie": "; ".join(cookies)}

    def push(self, body: bytes) -> None:
        """Pushes a gzipped bundle; raises unless every entry of it is stored without a remark."""
        self.connection.request("POST", self.address, body, {**self.headers, "Content-Encoding": "gzip"})
        answer = self.connection.getresponse()
        lines = answer.read()
        assert answer.status == http.HTTPStatus.OK, lines
        _, said = answers(lines)
        assert all(one["answer"] == "stored" and "assessment" not in one for one in said), said


def bodies(phone: Phone, count: int) -> tuple[list[bytes], list[bytes]]:
    """The animals' bundles, and the measurements' in batches; both gzipped, made before any clock runs."""
    animals = [phone.patient(f"Animal {n}") for n in range(max(1, count // MEASUREMENTS_PER_ANIMAL))]
    letters = [phone.measurement(phone.random.choice(animals)["id"]) for _ in range(count)]
    return _zipped(phone, animals), _zipped(phone, letters)


def _zipped(phone: Phone, letters: list[dict[str, object]]) -> list[bytes]:
    parts = [letters[at : at + BATCH] for at in range(0, len(letters), BATCH)]
    return [gzip.compress(bundle(phone.pairs(*part)), GZIP_LEVEL, mtime=0) for part in parts]


def measure(server: Server, count: int, phones: int) -> None:
    """Pushes and prints; the animals are filed before the clock runs."""
    made = [bodies(Phone(seed), count // phones) for seed in range(phones)]
    lines = [Line(server.port) for _ in range(phones)]
    for line, (animals, _) in zip(lines, made, strict=True):
        for body in animals:
            line.push(body)
    raw_bytes = sum(len(gzip.decompress(body)) for _, batches in made for body in batches)
    sent_bytes = sum(len(body) for _, batches in made for body in batches)
    cpu_s, database_cpu_s, began = server.cpu_s(), server.database_cpu_s(), time.monotonic()
    with ThreadPoolExecutor(phones) as pool:
        jobs = [pool.submit(lambda ln, bs: [ln.push(b) for b in bs], ln, bs) for ln, (_, bs) in zip(lines, made, strict=True)]
        for job in jobs:
            job.result()
    took_s = time.monotonic() - began
    print(f"measurements/s: {count / took_s:,.0f} ({count} in {took_s:.2f} s)")
    per = 10_000 / count
    print(f"server CPU s per 10,000: {(server.cpu_s() - cpu_s) * per:.2f}")
    if server.database_pid:
        print(f"PostgreSQL CPU s per 10,000: {(server.database_cpu_s() - database_cpu_s) * per:.2f}")
    print(f"bytes up per measurement: {sent_bytes / count:.0f} of {raw_bytes / count:.0f} (gzip {GZIP_LEVEL}, batches of {BATCH})")


def machine() -> str:
    """What it ran on, and how busy that was already."""
    model = next((line.split(":")[1].strip() for line in Path("/proc/cpuinfo").open() if line.startswith("model name")), "?")
    load = os.getloadavg()[0]
    return f"{os.cpu_count()} cores, {model}, {platform.system()}, Python {platform.python_version()}, load before {load:.1f}"


def main() -> None:
    """Reads the arguments, serves, measures."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--database", choices=("sqlite", "postgresql"), default="sqlite")
    parser.add_argument("--count", type=int, default=10_000)
    parser.add_argument("--phones", type=int, default=1, help="how many push at once")
    parser.add_argument("--folder", type=Path, help="where the database lies; a disk, not memory")
    arguments = parser.parse_args()
    print(f"{machine()}; {arguments.database}, durable, {arguments.phones} phone(s)")
    with tempfile.TemporaryDirectory(dir=arguments.folder) as folder, serving(arguments.database, Path(folder)) as server:
        measure(server, arguments.count, arguments.phones)


if __name__ == "__main__":
    main()
