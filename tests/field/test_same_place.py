"""An app killed in mid-series, and started anew at its front door, is at the same measurement with the same half-typed number.

Nothing is waited for: where the person was lies in the same strict transaction as what was typed last.
"""

from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

LEFT_MS = 500
"""Going back is written down just after it is done; a kill within that blink comes back to the measurement, which loses nothing."""

NewPhone = Callable[..., Phone]


def killed(phone: Phone) -> None:
    """As by an empty battery, and started anew at the front door, without a network."""
    phone.kill()
    phone.open("/", offline=True)


def test_a_killed_app_comes_back_to_its_measurement(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "148")
    phone.type_number("14")
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    server.kill()
    killed(phone)
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    expect(phone.page.get_by_role("button", name="2 readings")).to_be_visible()
    phone.tap("Undo")
    expect(phone.page.get_by_role("button", name="1 reading")).to_be_visible()


def test_it_comes_back_to_the_part_of_the_last_tap(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A dog")
    phone.choose("Breathing easy?", "Yes")
    phone.choose("Safe to handle?", "No")
    phone.shows("Try one of these, or do not measure today:")
    killed(phone)
    phone.shows("Try one of these, or do not measure today:")
    expect(phone.page.get_by_role("group", name="Breathing easy?").get_by_role("radio", name="Yes")).to_be_checked()
    expect(phone.page.get_by_role("group", name="Safe to handle?").get_by_role("radio", name="No")).to_be_checked()
    phone.tap("Show Calm")
    expect(phone.page.get_by_role("group", name="Demeanour")).to_be_visible()
    killed(phone)
    expect(phone.page.get_by_role("group", name="Demeanour")).to_be_visible()


def test_whoever_went_back_to_the_round_starts_there(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    phone.tap("Show Calm")
    expect(phone.page.get_by_role("group", name="Demeanour")).to_be_visible()
    phone.page.get_by_role("link", name="Round", exact=True).click()
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.wait_for_timeout(LEFT_MS)
    killed(phone)
    expect(phone.page.get_by_role("heading", name="Round", exact=True)).to_be_visible()
    expect(phone.page.get_by_role("link", name="Continue")).to_have_count(1)
