"""How many taps does the work take, counted in the page: four for a reading, at most 45 for a known animal from Round to filed.

The robot uses roles and names only. A tap is one trusted `pointerup` that the page itself sees, so neither a label's second click on its
field nor anything the driver does beside the screen is counted, and typing is not. The limits are the goals of the project.
"""

import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]
READING_TAPS_MOST, ANIMAL_TAPS_MOST = 4, 45
ANIMAL_TAPS_NOW = 41  # what it takes today: 11 before the readings, 7 × 4, Finish and File; one more is a step back, below the goal or not
WELL = ("Breathing easy?", "Awake and responsive?", "Free of pain?", "Safe to handle?")

COUNT = """
window.taps = 0;
addEventListener('pointerup', (event) => { if (event.isTrusted) window.taps += 1; }, true);
"""


def taps(phone: Phone) -> int:
    """Taps the page saw since it was loaded."""
    return phone.page.evaluate("window.taps")


def press(phone: Phone, group: str, answer: str) -> None:
    """Tap an answer where it is, as a thumb does."""
    phone.page.get_by_role("group", name=group, exact=True).get_by_role("radio", name=re.compile(rf"^{re.escape(answer)}\b")).first.click()


def first_visit(phone: Phone, species: str, site: str, posture: str) -> None:
    """A visit before today, from the animal's page, so that there is a last time."""
    phone.tap("Measure")
    work.set_up(phone, "Calm", "10", "Home")
    work.cuff(phone, "Doppler", "10 cm", "25, 30, 35, 40", "40", site, posture)
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "146", "144", "142", "144", "142")
    phone.tap("Finish")
    phone.tap("File")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()


def answer_all_well(phone: Phone) -> None:
    """*Ready?*: four times yes; the fourth opens *Calm*."""
    for question in WELL:
        press(phone, question, "Yes")
    phone.page.get_by_role("group", name="Demeanour").wait_for()


def test_a_known_animal_with_seven_readings_takes_at_most_45_taps(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(COUNT)
    phone.open()
    work.sign_in(phone)
    work.add_animal(phone, "Dog", "Fenna", "kennel 4")
    first_visit(phone, "Dog", "Forearm", "On its chest")
    before = taps(phone)
    phone.page.get_by_role("link", name="Fenna").first.click()
    phone.tap("Measure")
    answer_all_well(phone)
    press(phone, "Demeanour", "Calm")
    phone.tap("Start quiet time")
    phone.tap("Next: cuff")
    phone.page.get_by_role("button", name="As last time").first.click()
    phone.tap("Next: readings")
    for n, reading in enumerate(("152", "148", "146", "144", "146", "144", "142"), start=1):
        start = taps(phone)
        work.add_readings(phone, reading)
        phone.page.get_by_text(f"No. {n}:").wait_for()
        assert taps(phone) - start <= READING_TAPS_MOST
    phone.tap("Finish")
    expect(phone.page.get_by_text("minimal risk").or_(phone.page.get_by_text("low risk")).first).to_be_visible()
    phone.tap("File")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.shows("Filed: Fenna")
    used = taps(phone) - before
    print(f"Round to filed, seven readings: {used} taps")
    assert used <= ANIMAL_TAPS_NOW <= ANIMAL_TAPS_MOST


def test_an_animal_is_added_in_at_most_four_taps(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(COUNT)
    phone.open()
    work.sign_in(phone)
    before = taps(phone)
    phone.tap("Add animal")
    press(phone, "Species", "Cat")
    phone.page.get_by_label("Name", exact=True).tap()
    phone.page.keyboard.type("Minka")
    phone.tap("Save animal")
    phone.page.get_by_role("heading", name="Minka").first.wait_for()
    assert taps(phone) - before <= 4
