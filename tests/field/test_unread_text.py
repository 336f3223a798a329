"""Text that cannot be read is named, kept as typed, and never dropped in silence; and nobody is locked in by it."""

import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess


def test_unreadable_text_is_named_and_not_dropped(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    work.add_animal(phone, "Dog", "Tansy", "")
    phone.tap("Measure")
    phone.tap("Show Cuff")
    work.unfold(phone, "Limb")
    phone.fill("Cuff widths in the bag, in mm", "20, 2.5 cm")
    phone.shows("= 20, 25 mm")
    phone.fill("Limb circumference", "13x")
    phone.tap("Show Readings")
    problem = phone.page.get_by_role("alert").filter(has_text="There is a problem")
    expect(problem).to_contain_text("Limb circumference must be in mm / cm")
    expect(problem).to_be_focused()
    assert phone.page.title().startswith("Error:")
    expect(phone.page.get_by_label("Limb circumference", exact=True)).to_have_value("13x")
    phone.tap("Show Readings")
    phone.page.get_by_label("Systolic", exact=True).fill("142.5")
    phone.tap("Add")
    phone.shows("Systolic must be a whole number, like 142")
    expect(phone.page.get_by_label("Systolic", exact=True)).to_be_focused()
    phone.page.get_by_label("Systolic", exact=True).fill("142 mmHg")
    phone.tap("Add")
    phone.shows(re.compile("^142$"))
    phone.tap("Finish")
    phone.tap("File")
    expect(phone.page.get_by_role("alert")).to_contain_text("Mend what could not be read, or file without it.")
    assert server.rows("SELECT count(*) FROM measurements") == [(0,)]
    phone.tap("File without it")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.goto(phone.url + "/#/outbox")
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(2, timeout=30_000)
