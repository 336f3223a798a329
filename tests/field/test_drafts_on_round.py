"""Two measurements begun in the same minute and not filed can be told apart on the round, by eye and by name."""

import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess


def begin(phone: Phone, species: str) -> None:
    """A measurement of an animal whose name comes later, and back to the round."""
    phone.tap(f"A {species}")
    phone.button("Show Readings").wait_for()
    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()


def test_two_of_the_same_minute_are_two_names(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.page.clock.set_fixed_time("2026-11-25T12:00:04")
    begin(phone, "cat")
    phone.page.clock.set_fixed_time("2026-11-25T12:00:09")
    begin(phone, "cat")
    begin(phone, "dog")
    drafts = phone.page.get_by_role("link", name=re.compile("^Continue No animal yet"))
    expect(drafts).to_have_count(3)
    names = [str(one.get_attribute("aria-label")) for one in drafts.all()]
    assert sorted(re.sub(r"^.*readings yet ", "", name) for name in names) == [
        "Cat · begun 12:00:04", "Cat · begun 12:00:09", "Dog · begun 12:00"]
    drafts.filter(has_text="12:00:04").click()
    phone.tap("Show Readings")
    work.add_readings(phone, "150")
    phone.page.goto(phone.url + "/#/round")
    phone.shows("No animal yet: 1 reading")
    expect(drafts.filter(has_text=re.compile(r"12:00:0\d"))).to_have_count(0)  # now their readings tell them apart
