"""A phone that still runs an earlier build reads a record with kinds it never heard of, measures, files, and hands in.

Its kinds and fields are those of its own day: what a newer phone filed beside them must not keep it from the rest.
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import expect

from quietcuff.sync.receive import receive
from tests.databases import application
from tests.field.phone import Phone
from tests.field.server_process import PASSWORD, ServerProcess
from tests.releases import kept
from tests.sync import letters


@pytest.mark.parametrize("name", kept.names())
def test_an_earlier_build_hands_in(name: str, server: ServerProcess, new_phone: Callable[..., Phone], tmp_path: Path) -> None:
    server.kill()
    server.environment["QUIETCUFF_CLIENT"] = str(kept.unpack(name, tmp_path / "kept") / kept.CLIENT)
    server.start()
    _newer_phone_files(server)
    phone = new_phone(server.url)
    phone.open()
    _sign_in(phone)
    expect(phone.page.get_by_text("Newcomer")).to_be_visible(timeout=30_000)  # came in the same page, behind the bag
    phone.tap("Add animal")
    phone.choose("Species", "Dog")
    phone.fill("Name", "Tansy")
    phone.tap("Save animal")
    phone.tap("Measure")
    phone.tap("Show Readings")
    for reading in ("150", "148", "146", "147", "148", "146"):
        phone.type_number(reading)
        phone.tap("Add")
    phone.tap("Finish")
    phone.tap("File")
    phone.page.get_by_role("button", name="File", exact=True).wait_for(state="detached")
    phone.page.goto(phone.url + "/#/outbox")
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(2, timeout=30_000)
    # 148, 146, 147, 148, 146: 735 / 5 = 147.0, which is "low"; and both engines said so
    assert server.rows("SELECT category, differs FROM measurements") == [("low", 0)]


def _sign_in(phone: Phone) -> None:
    """In the words of the earlier builds, which stay as they were when today's change."""
    phone.fill("Login", "ada")
    phone.fill("Password", PASSWORD)
    phone.tap("I have read this")
    phone.tap("Sign in")


def _newer_phone_files(server: ServerProcess) -> None:
    newer = letters.Phone()
    told = {"sites_not_used": [{"site": "forearm", "why": "wound"}], "handling": {"grade": 1}, "bruises": True}
    animal = newer.letter("patient", {"species": "dog", "name": "Newcomer", **told})
    [(practice,)] = server.rows("SELECT id FROM practice")
    with application(f"sqlite:///{server.database}").app_context():
        lines = receive(practice, newer.device, letters.bundle(newer.pairs(newer.bag(), animal)), None, letters.NOW_MS)
    assert [one["answer"] for one in letters.answers(lines)[1]] == ["stored", "stored"]
