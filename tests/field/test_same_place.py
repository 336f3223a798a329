"""An app killed in mid-series, and started anew at its front door, is at the same measurement with the same half-typed number."""

from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

WRITTEN_TO_DISK_MS = 7_000
"""Chromium writes its small store (where the last place lies) some seconds late; the readings themselves lie elsewhere, at once."""


def test_a_killed_app_comes_back_to_its_measurement(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "148")
    phone.page.wait_for_timeout(WRITTEN_TO_DISK_MS)
    phone.type_number("14")
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    server.kill()
    phone.kill()
    phone.open("/", offline=True)
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    expect(phone.page.get_by_role("button", name="2 readings")).to_be_visible()
    phone.tap("Undo")
    expect(phone.page.get_by_role("button", name="1 reading")).to_be_visible()
