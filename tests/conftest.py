"""For every test: no network beyond this machine, and a table of seconds by folder at the end of the run.

The table keeps the time of each kind of test in sight; a test that reached the internet would tell about the internet.
"""

from __future__ import annotations

import ipaddress
import sys
from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Playwright

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
    from playwright.sync_api import sync_playwright

    with sync_playwright() as driver:
        yield driver


def pytest_configure(config: pytest.Config) -> None:
    """Closes the network and starts the table, once a run."""
    sys.addaudithook(_refuse_the_network)
    config.pluginmanager.register(SecondsByFolder(), "seconds-by-folder")


class SecondsByFolder:
    """Adds up set-up, call and tear-down of each test under the folder it lies in."""

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
