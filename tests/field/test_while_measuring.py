"""What stands beside the keys while measuring: the mean only where the practice shows it, and a screen that is asked to stay awake.

Roles and names only. The figures were worked by hand from rule set v1; the browser's wake lock is stood in for at its border, since a
browser without a screen grants none.
"""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]
MEAN = re.compile(r"^144 mmHg")

WAKE = """
window.asked = [];
Object.defineProperty(navigator, 'wakeLock', { value: { request: async (kind) => {
  window.asked.push(kind);
  if (%s) throw new DOMException('no', 'NotAllowedError');
  return { released: false, release: async () => { window.asked.push('released'); }, addEventListener: () => {} };
} } });
"""


def measured(phone: Phone) -> None:
    """Six readings of a dog nobody knows; 720 / 5 = 144 of the latest five."""
    phone.page.goto(phone.url + "/#/round")
    phone.tap("A dog")
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "146", "143", "145", "142", "144")
    phone.shows("Readings agree")


def test_the_mean_is_hidden_until_the_practice_shows_it(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    measured(phone)
    expect(phone.page.get_by_text(MEAN)).to_have_count(0)
    expect(phone.page.get_by_text(re.compile("risk of organ damage"))).to_have_count(0)
    phone.page.goto(phone.url + "/#/this-phone")
    phone.page.get_by_role("radio", name="Shown", exact=True).check(force=True)
    measured(phone)
    expect(phone.page.get_by_text(MEAN).first).to_be_visible()
    expect(phone.page.get_by_text(re.compile("low risk of organ damage", re.I)).first).to_be_visible()


@pytest.mark.parametrize("refuses", [False, True])
def test_the_screen_is_asked_to_stay_awake_and_a_refusal_is_said(server: ServerProcess, new_phone: NewPhone, refuses: bool) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(WAKE % str(refuses).lower())
    phone.open()
    work.sign_in(phone)
    phone.tap("A dog")
    phone.tap("Show Readings")
    assert phone.page.evaluate("window.asked") == []
    work.add_readings(phone, "150")
    phone.page.wait_for_function("() => window.asked.includes('screen')")
    expect(phone.page.get_by_text("The screen may sleep; times keep counting.")).to_have_count(1 if refuses else 0)
    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    assert phone.page.evaluate("window.asked.at(-1)") == ("screen" if refuses else "released")
