"""What a person does with a phone, step by step, through roles and names only. Holds no expectation about results."""

import re

from tests.field.phone import Phone
from tests.field.server_process import PASSWORD


def sign_in(phone: Phone, login: str = "ada") -> None:
    """First start with a network: sign in, read the cautions, wait until the shell is kept for a start without one."""
    phone.fill("Login", login)
    phone.fill("Password", PASSWORD)
    phone.tap("I have read this")
    phone.tap("Sign in")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.evaluate("navigator.serviceWorker.ready.then(() => true)")


def add_animal(phone: Phone, species: str, name: str, mark: str) -> None:
    """From the list of patients to the page of a new one."""
    phone.tap("Add animal")
    phone.choose("Species", species)
    phone.fill("Name", name)
    phone.fill("Mark", mark)
    phone.tap("Save animal")
    phone.page.get_by_role("heading", name=name).first.wait_for()


def set_up(phone: Phone, demeanour: str, rest_min: str, place: str) -> None:
    """The part *Calm*."""
    phone.tap("Show Calm")
    phone.choose("Demeanour", demeanour)
    more = phone.page.get_by_role("button", name="More", exact=True, expanded=False)
    if more.count() > 0:
        more.click()
    by_hand = phone.page.get_by_role("button", name=re.compile("^Minutes of quiet"))
    by_hand.wait_for()
    if by_hand.get_attribute("aria-expanded") == "false":
        by_hand.click()
    phone.fill("Quiet time before the first reading, in minutes", rest_min)
    phone.choose("Place", place)


FOLDED_MS = 450
"""A question of the part *Cuff* folds this long after its answer, and the next one opens."""


def unfold(phone: Phone, question: str) -> None:
    """Open a question of the part *Cuff* that is folded to a line with its answer."""
    phone.page.wait_for_timeout(FOLDED_MS)
    line = phone.page.get_by_role("button", name=re.compile(rf"^{re.escape(question)} "), expanded=False)
    if line.count() > 0:
        line.first.click()


def take_cuff(phone: Phone, width_mm: str) -> None:
    """The width used, offered or not; what a cuff is marked with stands behind its width."""
    group = phone.page.get_by_role("group", name="Cuff used, width in mm")
    group.get_by_role("radio", name=re.compile(rf"^{width_mm}\b")).check(force=True)


def cuff(phone: Phone, method: str, circumference: str, bag: str, take: str, site: str, posture: str) -> None:
    """The part *Cuff*, in the order of the work; `bag` is typed where there is none yet, and empty where there is one."""
    phone.tap("Show Cuff")
    phone.page.get_by_role("button", name="Next: readings").wait_for()
    unfold(phone, "Method")
    phone.choose("Method", method)
    unfold(phone, "Site")
    phone.choose("Site", site)
    unfold(phone, "Limb")
    phone.fill("Limb circumference", circumference)
    phone.page.keyboard.press("Tab")
    if bag:
        phone.fill("Cuff widths in the bag, in mm", bag)
        phone.page.keyboard.press("Tab")
    unfold(phone, "Cuff")
    take_cuff(phone, take)
    unfold(phone, "Posture")
    phone.choose("Posture", posture)


def add_readings(phone: Phone, *readings: str) -> None:
    """Readings by the number pad. Of several numbers ("152 118 95 180") the third digit moves on; *Next number* does where there are only two."""
    for reading in readings:
        numbers = reading.split()
        for at, number in enumerate(numbers):
            phone.type_number(number)
            if len(number) < 3 and at + 1 < len(numbers):
                phone.tap("Next number")
        phone.tap("Add")
        phone.page.get_by_text(numbers[0], exact=True).first.wait_for()
