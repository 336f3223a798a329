"""For every test: no network beyond this machine, two processes that share the work, and a table of seconds by folder at the end.

The table keeps the time of each kind of test in sight; a test that reached the internet would tell about the internet.
"""

from __future__ import annotations

import ipaddress
import os
import sys
from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import pytest
from xdist.scheduler import LoadScopeScheduling

if TYPE_CHECKING:
    from playwright.sync_api import Playwright

PROCESSES_MOST = 2
"""What the tests were tried with: each process has a browser and a server of its own beside it. `-n 4` takes more."""
PATIENCE_MS = 20_000
"""How long a browser test waits for what it expects, where it names no time: long, as a busy machine is slow without being wrong."""
LOOPBACK_NAMES = {"localhost", "", None}


class NetworkRefused(RuntimeError):
    """A test tried to reach beyond this machine."""


def _is_loopback(host: Any) -> bool:
    if host in LOOPBACK_NAMES:
        return True
    try:
        return ipaddress.ip_address(str(host)).is_loopback
    except ValueError:
        return False


def _refuse_the_network(event: str, arguments: tuple[Any, ...]) -> None:
    """An audit hook, because it sees every socket of this process, whichever library opened it."""
    if event == "socket.connect" and isinstance(arguments[1], tuple) and not _is_loopback(arguments[1][0]):
        raise NetworkRefused(f"connection to {arguments[1][0]}")
    if event == "socket.getaddrinfo" and not _is_loopback(arguments[0]):
        raise NetworkRefused(f"look-up of {arguments[0]}")


@pytest.fixture(scope="session")
def playwright_driver() -> Iterator[Playwright]:
    """Playwright's driver, once a run for all folders: a second one in the same thread would not start."""
    from playwright.sync_api import expect, sync_playwright

    expect.set_options(timeout=PATIENCE_MS)
    with sync_playwright() as driver:
        yield driver


def pytest_configure(config: pytest.Config) -> None:
    """Closes the network and starts the table, once a run."""
    sys.addaudithook(_refuse_the_network)
    config.pluginmanager.register(SecondsByFolder(), "seconds-by-folder")


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """How many processes share a run; 0, none but this one, where files are named or what a test prints is to be seen (`-s`)."""
    names_files = any(".py" in word for word in config.option.file_or_dir)
    if names_files or config.option.capture == "no":
        return 0
    return min(PROCESSES_MOST, len(os.sched_getaffinity(0)))


def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> LoadScopeScheduling:
    """In the order of the folders, so that the run ends with many small shares and neither process waits long for the other."""
    config.option.loadscopereorder = False
    return Shares(config, log)


class Shares(LoadScopeScheduling):
    """What one process takes at a time: a file, since its tests share what is costly to set up.

    All of tests/design, which walks through every screen once; a single test of tests/field, since each sets up its own.
    """

    def _split_scope(self, nodeid: str) -> str:
        if nodeid.startswith("tests/design/"):
            return "tests/design"
        return nodeid if nodeid.startswith("tests/field/") else nodeid.split("::")[0]


class SecondsByFolder:
    """Adds up set-up, call and tear-down of each test under the folder it lies in; together more than the run took, where two share it."""

    def __init__(self) -> None:
        self.seconds: dict[str, float] = defaultdict(float)
        self.tests: dict[str, int] = defaultdict(int)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Called thrice a test, once each phase."""
        parts = report.nodeid.split("::")[0].split("/")
        folder = parts[1] if len(parts) > 2 else "."
        self.seconds[folder] += report.duration
        self.tests[folder] += report.when == "call"

    def pytest_terminal_summary(self, terminalreporter: pytest.TerminalReporter) -> None:
        """Prints the table, the slowest folder first."""
        terminalreporter.section("seconds by folder under tests/")
        for folder in sorted(self.seconds, key=lambda name: -self.seconds[name]):
            terminalreporter.write_line(f"{folder:<16}{self.seconds[folder]:8.1f} s {self.tests[folder]:6d} tests")
        total = f"{sum(self.seconds.values()):8.1f} s {sum(self.tests.values()):6d} tests"
        terminalreporter.write_line(f"{'together':<16}{total}")
