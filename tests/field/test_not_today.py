"""A visit that was not to be: asked, answered with no, filed without a network in three taps, and in the record later.

The truth is read from the server's database. That an animal in distress is helped before it is measured is common practice.
"""

import json
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]


def test_not_today_is_filed_like_any_visit(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    work.add_animal(phone, "Cat", "Momo", "cage 4")
    assert phone.context is not None
    phone.context.set_offline(True)
    phone.tap("Measure")
    phone.choose("Safe to handle?", "No")
    phone.shows("Try one of these, or do not measure today:")
    phone.tap("Not today")
    phone.tap("Not safe to handle")
    phone.shows("Not measured today: Not safe to handle. That is a result, and it is filed as one.")
    phone.fill("A few words, may stay empty", "hid behind the stove")
    phone.kill_tab()
    expect(phone.page.get_by_label("A few words, may stay empty")).to_have_value("hid behind the stove")
    phone.tap("File")
    phone.shows("Saved on this phone")
    phone.back_in_reach()
    phone.shows("In the record", timeout_ms=30_000)

    [(letter, phones, servers)] = server.rows(
        """SELECT j.letter, m.phone_assessment, m.server_assessment FROM measurements m
           JOIN journal j ON j.practice = m.practice AND j.position = m.position""")
    body = json.loads(letter)["body"]
    assert body["outcome"] == {"kind": "not_today", "why": "not_safe", "note": "hid behind the stove"}
    assert body["ready"] == {"safe_to_handle": False}
    assert [one["readings"] for one in body["sets"]] == [[]]
    assert json.loads(phones) == json.loads(servers), "both engines answer a visit without a reading alike"
    assert "category" not in json.loads(servers)

    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("link", name="Momo").first.click()
    phone.shows("Not today: not safe to handle")
    phone.shows("hid behind the stove")


def test_help_comes_first_and_measuring_stays_possible(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A dog")
    phone.choose("Breathing easy?", "No")
    expect(phone.page.get_by_role("alert")).to_contain_text("Do not measure. Help first.")
    for sign in ("Laboured or open-mouth breathing", "Collapse", "A seizure going on", "Cold, painful hind limbs", "Common practice"):
        expect(phone.page.get_by_role("alert")).to_contain_text(sign)
    expect(phone.button("Show Readings")).to_have_count(0)
    phone.kill_tab()
    expect(phone.page.get_by_role("alert")).to_contain_text("Do not measure. Help first.")
    phone.tap("Measure all the same")
    phone.shows("Measured all the same. The answer stays in the record.")
    phone.tap("Show Readings")
    expect(phone.button("Add")).to_be_visible()


def test_four_taps_open_calm(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    for question in ("Breathing easy?", "Awake and responsive?", "Free of pain?", "Safe to handle?"):
        expect(phone.page.get_by_role("group", name="Demeanour")).to_have_count(0)
        phone.choose(question, "Yes")
    expect(phone.page.get_by_role("group", name="Demeanour")).to_be_visible()
    expect(phone.button("Show Ready?")).to_have_accessible_description("yes to all four")
    phone.tap("Show Ready?")
    expect(phone.page.get_by_role("group", name="Free of pain?").get_by_role("radio", name="Yes")).to_be_checked()
