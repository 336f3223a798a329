"""Where the words give no band the picture must give none either: a sedated animal, and a pressure that is too low for the bands.

A mark between two edges is read as a band at a glance. Series invented for this test, means worked by hand.
"""

from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]


def measure(phone: Phone, name: str, state: str, readings: list[str]) -> None:
    """One dog by Doppler from the list of patients to its result."""
    phone.page.goto(phone.url + "/#/patients")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    work.add_animal(phone, "Dog", name, "kennel 2")
    phone.tap("Measure")
    phone.tap("Show Calm")
    phone.choose("State", state)
    phone.tap("Show Readings")
    work.add_readings(phone, *readings)
    phone.tap("Finish")


def test_no_place_among_the_bands_without_a_band(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    result = phone.page.get_by_role("region", name="Result")
    line = phone.page.get_by_role("img", name="on a line with the edges of the bands")
    # the first does not count; 151 + 153 + 150 + 154 + 152 = 760, / 5 = 152
    readings = ["158", "151", "153", "150", "154", "152"]

    measure(phone, "Brammel", "Awake", readings)
    expect(result).to_contain_text("low risk of organ damage (140–159)", ignore_case=True)
    expect(line).to_be_visible()

    measure(phone, "Sorrel", "Sedated", readings)
    expect(result).to_contain_text("The animal is sedated: a number and no band.")
    expect(result).to_contain_text("152 mmHg from 5 readings.")
    expect(line).to_have_count(0)

    # 95 + 96 + 94 + 98 + 97 = 480, / 5 = 96
    measure(phone, "Wisp", "Awake", ["99", "95", "96", "94", "98", "97"])
    expect(result).to_contain_text("Not placed in a risk band")
    expect(result).to_contain_text("96 mmHg from 5 readings.")
    expect(result).not_to_contain_text("minimal", ignore_case=True)
    expect(line).to_have_count(0)
