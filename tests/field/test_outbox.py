"""An entry that the record refuses stands in the outbox with its reason, first of all; what was filed around it is in the record, and
nothing is lost. Nothing of the server's answer is made up.

How it comes to be: a phone is set up from a copy of another, draft and all, as moving to a new device does. Both then file the draft,
each with readings of its own: one id, two letters. The record keeps the first and refuses the second (`id_conflict`).
Roles and names only; what is true is read from the server's database. Animals are invented for this test.
"""

import json
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]
SENT_MS = 45_000
FIRST, OTHER = ("150", "146", "144", "142", "143", "141"), ("162", "160", "161")
REASON = "The record has another entry of the same id. This one is safe on this phone: tell who runs your practice's record."


def entry(phone: Phone, name: str) -> Locator:
    """One entry of the outbox, by what it is called."""
    return phone.page.get_by_role("listitem").filter(has=phone.page.get_by_text(name, exact=True))


def to_outbox(phone: Phone) -> None:
    phone.page.goto(phone.url + "/#/outbox")
    phone.page.get_by_role("heading", name="Outbox", exact=True).wait_for()


def to_round(phone: Phone) -> None:
    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()


def add_dog(phone: Phone, name: str) -> None:
    to_round(phone)
    work.add_animal(phone, "Dog", name, "")


def file_readings(phone: Phone, *more: str) -> None:
    """The draft of Fenna, gone on with and filed."""
    to_round(phone)
    phone.page.get_by_role("link", name=re.compile("^Continue Fenna: 3 readings")).click()
    work.add_readings(phone, *more)
    phone.tap("Finish")
    phone.tap("File")
    phone.shows("Filed: Fenna")


@pytest.fixture
def second(server: ServerProcess, new_phone: NewPhone, tmp_path: Path) -> Phone:
    """The phone that was set up from a copy of the first, still without a network; the first has filed the draft both have."""
    first = new_phone(server.url, "first")
    first.open()
    work.sign_in(first)
    work.add_animal(first, "Dog", "Fenna", "kennel 4")
    first.tap("Measure")
    first.tap("Show Readings")
    work.add_readings(first, *FIRST[:3])
    expect(first.page.get_by_text("0 not sent")).to_be_visible(timeout=SENT_MS)
    first.close()
    shutil.copytree(first.profile, tmp_path / "second", symlinks=True, ignore=shutil.ignore_patterns("Singleton*"))
    first.open()
    file_readings(first, *FIRST[3:])
    expect(first.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=SENT_MS)
    first.close()
    second = new_phone(server.url, "second")
    second.open(offline=True)
    return second


def systolics(letter: bytes | str) -> list[int]:
    """The readings of a letter as it was handed in."""
    return [reading["systolic_mmhg"] for reading in json.loads(letter)["body"]["sets"][0]["readings"]]


def test_a_refused_entry_needs_a_person_and_holds_up_no_other(server: ServerProcess, second: Phone) -> None:
    phone = second
    add_dog(phone, "Before")
    file_readings(phone, *OTHER)
    add_dog(phone, "After")
    to_outbox(phone)
    for name in ("Before, added", "Fenna, measured", "After, added"):
        expect(entry(phone, name)).to_contain_text("Saved on this phone")

    phone.back_in_reach()
    phone.tap("Send now")
    expect(entry(phone, "Fenna, measured")).to_contain_text("Needs you", timeout=SENT_MS)
    expect(entry(phone, "Fenna, measured")).to_contain_text(REASON)
    for name in ("Before, added", "After, added"):
        expect(entry(phone, name)).to_contain_text("In the record")
    expect(phone.page.get_by_role("listitem").first).to_contain_text("Fenna, measured")
    expect(phone.page.get_by_role("status")).to_contain_text("1 needs you")

    assert_record(server, animals=3)

    # sent again with one more: the others go out, and the refused one is neither gone nor offered for good as something new
    add_dog(phone, "Later")
    to_outbox(phone)
    phone.tap("Send now")
    expect(entry(phone, "Later, added")).to_contain_text("In the record", timeout=SENT_MS)
    expect(entry(phone, "Fenna, measured")).to_contain_text("Needs you")
    assert_record(server, animals=4)
    phone.kill()
    phone.open("/#/outbox", offline=True)
    expect(entry(phone, "Fenna, measured")).to_contain_text(REASON)


def assert_record(server: ServerProcess, animals: int) -> None:
    """The first phone's letter stands; the second's lies in the tray with every reading; no animal is missing."""
    [(letter,)] = server.rows("SELECT letter FROM journal WHERE kind = 'measurement'")
    assert systolics(letter) == [int(one) for one in FIRST]
    [(state, code, aside)] = server.rows("SELECT state, code, letter FROM tray")
    assert (state, code) == ("refused", "id_conflict")
    assert systolics(aside) == [int(one) for one in (*FIRST[:3], *OTHER)]
    assert server.rows("SELECT count(*) FROM journal WHERE kind = 'patient'") == [(animals,)]
