"""A visit begun for one animal and filed under another: the letter is the other's alone, and nothing known of the first goes with it.

Roles and names only; what was filed is read from the server's database. Dogs and readings are invented for this test.
"""

import json
import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

SENT_MS = 45_000
THEN, NOW = ("150", "142", "144", "143", "145", "141"), ("172", "166", "168", "165", "169", "167")


def measured(phone: Phone, readings: tuple[str, ...]) -> None:
    """A whole series of the animal whose page this is, up to its result."""
    phone.tap("Measure")
    phone.tap("Show Readings")
    work.add_readings(phone, *readings)
    phone.tap("Finish")
    phone.page.get_by_role("region", name="Result").wait_for()


def add_dog(phone: Phone, name: str, mark: str) -> str:
    """Adds it from the round; gives the address of its page."""
    phone.page.goto(phone.url + "/#/round")
    work.add_animal(phone, "Dog", name, mark)
    return phone.page.url


def test_a_visit_is_filed_under_another_animal(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    brindle = add_dog(phone, "Brindle", "kennel 9")
    fenna = add_dog(phone, "Fenna", "kennel 4")
    measured(phone, THEN)
    phone.tap("File")
    phone.shows("Filed: Fenna")

    phone.page.goto(fenna)
    measured(phone, NOW)
    phone.shows("File under Fenna, kennel 4, Dog")
    phone.tap("Another animal")
    phone.tap("Back to the result")
    expect(phone.page.get_by_text("File under Fenna, kennel 4, Dog")).to_be_focused()
    phone.tap("Another animal")
    phone.page.get_by_role("heading", name="Which animal was this?").wait_for()
    phone.page.get_by_role("button", name=re.compile("^Choose Brindle")).click()
    phone.shows("File under Brindle, kennel 9, Dog")
    expect(phone.page.get_by_text("File under Brindle, kennel 9, Dog")).to_be_focused()  # the key that chose it is gone
    expect(phone.page.get_by_role("heading", level=1)).to_contain_text("Brindle")
    expect(phone.page.get_by_role("banner")).not_to_contain_text("kennel 4")
    phone.tap("File")
    phone.shows("Filed: Brindle")
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=SENT_MS)

    letters = [json.loads(letter)["body"] for (letter,) in server.rows("SELECT letter FROM journal WHERE kind = 'measurement' ORDER BY position")]
    assert [one["patient"] for one in letters] == [fenna.rsplit("/", 1)[1], brindle.rsplit("/", 1)[1]]
    assert [[reading["systolic_mmhg"] for reading in one["sets"][0]["readings"]] for one in letters] == [[*map(int, THEN)], [*map(int, NOW)]]
    # Fenna's last visit is none of Brindle's
    assert "previous" not in letters[1]
    for address, mean in ((fenna, "143"), (brindle, "167")):  # 715 / 5 and 835 / 5
        phone.page.goto(address)
        expect(phone.page.get_by_text(re.compile("mean [0-9.]+ mmHg"))).to_have_text([re.compile(f"mean {mean} mmHg")])


def test_the_way_back_to_a_result_of_no_animal_keeps_the_focus_in_it(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    phone.tap("Show Readings")
    work.add_readings(phone, *NOW)
    phone.tap("Finish")
    phone.tap("File")
    phone.tap("Back to the result")
    expect(phone.page.get_by_role("region", name="Result")).to_be_focused()
