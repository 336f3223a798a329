"""One server, one phone and one walk through every screen for all checks of this folder: what each question found at each place.

The walk is made once because it takes most of the time; the tests only say what must not have been found.
"""

from __future__ import annotations

import http.server
import os
import subprocess
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright

from tests.architecture.tree import ROOT
from tests.design import asked
from tests.design.places import PLACES, Walk, walked
from tests.field.phone import Phone
from tests.field.server_process import PASSWORD, ServerProcess

QUESTIONS: dict[str, Callable[[Page], list[str]]] = {
    "reach": asked.reach, "targets": asked.targets, "reflow": asked.reflow, "unnamed": asked.unnamed,
    "motion": asked.motion, "strange_colours": asked.strange_colours,
    "colour_only": lambda page: asked.ask(page, "colourOnly"),
}


class _Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files and keeps no log."""

    def log_message(self, *_: object) -> None:
        """Nothing."""


@dataclass
class Seen:
    """What was found: question → place → faults; and the risk phrase shown at each place that has one."""

    faults: dict[str, dict[str, list[str]]] = field(default_factory=lambda: {question: {} for question in QUESTIONS})
    phrases: dict[str, str] = field(default_factory=dict)


@pytest.fixture(scope="session")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[ServerProcess]:
    """A founded practice, running, for every check of this folder."""
    process = ServerProcess(tmp_path_factory.mktemp("server"))
    process.found()
    process.start()
    yield process
    process.kill()


@pytest.fixture(scope="session")
def phone(playwright_driver: Playwright, server: ServerProcess, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Phone]:
    """One phone for the whole folder; no violation of the policy and no uncaught error may be left behind."""
    violations: list[str] = []
    one = Phone(playwright_driver, tmp_path_factory.mktemp("phone"), server.url, violations)
    one.open()
    one.page.set_default_timeout(10_000)
    yield one
    one.close()
    assert violations == []


@pytest.fixture(scope="session")
def seen(phone: Phone, server: ServerProcess) -> Seen:
    """The walk. With QUIETCUFF_PICTURES naming a folder, each place is kept there in greys, to be looked at."""
    found, pictures = Seen(), os.environ.get("QUIETCUFF_PICTURES")
    walk = Walk(phone.page, server.url, "ada", PASSWORD)
    for place in walked(walk, PLACES):
        for question, ask in QUESTIONS.items():
            found.faults[question][place.name] = ask(phone.page)
        phrase = phone.page.locator(".phrase")
        if phrase.count() > 0:
            found.phrases[place.name] = " ".join(phrase.all_inner_texts())
        if pictures:
            _in_greys(phone.page, Path(pictures) / f"{place.name}.png")
    return found


def _in_greys(page: Page, file: Path) -> None:
    page.evaluate("document.documentElement.style.filter = 'grayscale(1)'")
    page.screenshot(path=file, full_page=True)
    page.evaluate("document.documentElement.style.filter = ''")


@pytest.fixture(scope="session")
def open_page(phone: Phone, seen: Seen) -> Page:
    """The phone's page after the walk: signed in, with a record."""
    return phone.page


@pytest.fixture(scope="session")
def parts(phone: Phone, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    """The page of all parts, built anew, in a window beside the app's."""
    folder = tmp_path_factory.mktemp("parts")
    done = subprocess.run(["npx", "vite", "build", "--config", "vite.parts.ts", "--outDir", str(folder), "--emptyOutDir"],
                          cwd=ROOT / "client", capture_output=True, text=True, timeout=120, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=folder)) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        assert phone.context is not None
        page = phone.context.new_page()
        page.goto(f"http://localhost:{server.server_port}/parts.html")
        page.get_by_role("region", name="glossary").wait_for()
        yield page
        page.close()
        server.shutdown()
