"""Fixtures of the field tests: one real server, phones on profiles of their own, and no violation of the security policy left behind."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright

from tests.field.phone import Phone
from tests.field.server_process import ServerProcess


@pytest.fixture
def server(tmp_path: Path) -> Iterator[ServerProcess]:
    """A founded practice on a server of its own, running."""
    data = tmp_path / "server"
    data.mkdir()
    process = ServerProcess(data)
    process.found()
    process.start()
    yield process
    process.kill()


@pytest.fixture
def new_phone(playwright_driver: Playwright, tmp_path: Path) -> Iterator[Callable[..., Phone]]:
    """Makes phones; afterwards none of them may have seen a violation of the policy or an uncaught error."""
    phones: list[Phone] = []
    violations: list[str] = []

    def make(url: str, name: str = "phone") -> Phone:
        phone = Phone(playwright_driver, tmp_path / name, url, violations)
        phones.append(phone)
        return phone

    yield make
    for phone in phones:
        phone.close()
    assert violations == []
