"""A phone that still runs an earlier build measures, files, and hands in to this server, which has the same result."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess
from tests.releases import kept


@pytest.mark.parametrize("name", kept.names())
def test_an_earlier_build_hands_in(name: str, server: ServerProcess, new_phone: Callable[..., Phone], tmp_path: Path) -> None:
    server.kill()
    server.environment["QUIETCUFF_CLIENT"] = str(kept.unpack(name, tmp_path / "kept") / kept.CLIENT)
    server.start()
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    work.add_animal(phone, "Dog", "Tansy", "")
    phone.tap("Measure")
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "148", "146", "147", "148", "146")
    phone.tap("Finish")
    phone.tap("File")
    phone.page.get_by_role("button", name="File", exact=True).wait_for(state="detached")
    phone.page.goto(phone.url + "/#/outbox")
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(2, timeout=30_000)
    # 148, 146, 147, 148, 146: 735 / 5 = 147.0, which is "low"; and both engines said so
    assert server.rows("SELECT category, differs FROM measurements") == [("low", 0)]
