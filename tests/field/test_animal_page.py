"""An animal is added in a few taps and told about later; what is half typed is found again, and only where it belongs.

Taps are counted by the page itself, as trusted clicks; typing is none.
"""

import json
from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

COUNT_TAPS = "window.taps = 0; addEventListener('click', (e) => { if (e.isTrusted) window.taps += 1; }, true);"
MOST_TAPS = 4

SLOW_TO_READ = """
    const decrypt = crypto.subtle.decrypt.bind(crypto.subtle);
    crypto.subtle.decrypt = async (...of) => { await new Promise((go) => setTimeout(go, 300)); return decrypt(...of); };
    setTimeout(() => delete crypto.subtle.decrypt, 1000);
"""

NOTE_TROUBLE = """
    window.troubles = [];
    const note = () => window.troubles.push(...[...document.querySelectorAll("[role=alert]")].map((one) => one.textContent));
    new MutationObserver(note).observe(document.body, { childList: true, subtree: true, characterData: true });
"""


def open_signed_in(server: ServerProcess, new_phone: Callable[..., Phone]) -> Phone:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    return phone


def test_an_animal_is_there_after_four_taps_at_most(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    phone.page.evaluate(COUNT_TAPS)
    phone.tap("Add animal")
    phone.choose("Species", "Dog")
    phone.page.get_by_label("Name", exact=True).press_sequentially("Quill")
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("Quill")
    phone.tap("Save animal")
    phone.page.get_by_role("heading", name="Quill").wait_for()
    assert 3 <= phone.page.evaluate("window.taps") <= MOST_TAPS


def test_half_typed_at_file_survives_and_stays_at_file(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    phone.tap("A cat")
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "148")
    phone.tap("Finish")
    phone.tap("File")
    phone.tap("Add animal")
    phone.page.get_by_label("Name", exact=True).press_sequentially("Moss")
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("Moss")
    phone.kill_tab()
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("Moss")
    phone.page.goto(phone.url + "/#/round")
    expect(phone.page.get_by_role("heading", name="Round", exact=True)).to_be_visible()  # no form in its place
    phone.tap("Add animal")
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("")


def test_an_animal_saved_right_before_the_battery_died_is_not_offered_again(
    server: ServerProcess, new_phone: Callable[..., Phone]
) -> None:
    phone = open_signed_in(server, new_phone)
    phone.tap("Add animal")
    phone.choose("Species", "Dog")
    phone.fill("Name", "Tansy")
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("Tansy")
    phone.tap("Save animal")
    expect(phone.page.get_by_role("heading", name="Tansy")).to_be_visible()
    phone.kill()
    phone.open("/#/round")
    expect(phone.page.get_by_role("heading", name="Round", exact=True)).to_be_visible()
    expect(phone.page.get_by_role("link", name="Tansy")).to_have_count(1)
    phone.tap("Add animal")
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("")


def typed_in(page: Page, name: str) -> None:
    page.get_by_role("button", name="Add animal", exact=True).click()
    page.get_by_label("Name", exact=True).press_sequentially(name)
    expect(page.get_by_label("Name", exact=True)).to_have_value(name)


def test_two_windows_have_a_form_each(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    assert phone.context is not None
    first, second = phone.page, phone.context.new_page()
    typed_in(first, "Brammel")
    second.goto(server.url)
    expect(second.get_by_role("heading", name="Round", exact=True)).to_be_visible()  # the other window's form is not taken over
    typed_in(second, "Quill")
    expect(first.get_by_label("Name", exact=True)).to_have_value("Brammel")
    for page, name in ((first, "Brammel"), (second, "Quill")):
        page.get_by_role("radio", name="Dog", exact=True).check(force=True)
        page.get_by_role("button", name="Save animal", exact=True).click()
        page.get_by_role("heading", name=name).wait_for()
    for page in (first, second):  # each counts its own for certain
        expect(page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=30_000)
    assert server.rows("SELECT name FROM patients ORDER BY name") == [("Brammel",), ("Quill",)]


def who_form(page: Page) -> None:
    page.get_by_text("Who it is", exact=True).click()
    page.get_by_role("button", name="Change or add", exact=True).click()
    page.get_by_label("Name", exact=True).wait_for()


def test_what_another_window_saved_meanwhile_is_shown_and_neither_is_lost(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    work.add_animal(phone, "Cat", "Mira", "kennel 7")
    assert phone.context is not None
    who_form(phone.page)
    phone.fill("Name", "Mirabel")
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("Mirabel")
    other = phone.context.new_page()
    other.goto(phone.page.url)
    other.get_by_role("heading", name="Mira", exact=True).wait_for()
    who_form(other)
    for label, text in (("Name", "Mirella"), ("Breed", "Manx"), ("Why this change", "misheard")):
        other.get_by_label(label, exact=True).fill(text)
        expect(other.get_by_label(label, exact=True)).to_have_value(text)
    other.get_by_role("button", name="Save changes", exact=True).click()
    other.get_by_role("heading", name="Mirella", exact=True).wait_for()
    phone.shows("Taken over from there, since you changed nothing in it: Breed.")
    phone.shows("Name. Here: Mirabel. Saved meanwhile: Mirella.")
    phone.fill("Why this change", "heard right")
    phone.tap("Save changes")
    phone.shows("Name: choose which of the two stands")
    assert server.rows("SELECT count(*) FROM journal WHERE kind = 'patient'") <= [(2,)]
    phone.kill_tab()
    phone.tap("Keep Mirabel")
    expect(phone.button("Keep Mirabel")).to_have_count(0)
    phone.tap("Save changes")
    expect(phone.page.get_by_role("heading", name="Mirabel", exact=True)).to_be_visible()
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=30_000)
    [(letter,)] = server.rows("SELECT letter FROM journal ORDER BY position DESC LIMIT 1")
    said = json.loads(letter)
    assert (said["reason"], said["body"]) == (
        "heard right", {"species": "cat", "name": "Mirabel", "mark": "kennel 7", "breed": "Manx"})


def test_a_grade_saved_meanwhile_and_what_worked_typed_here_both_stand(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    work.add_animal(phone, "Cat", "Mira", "")
    assert phone.context is not None
    other = phone.context.new_page()
    other.goto(phone.page.url)
    for page in (phone.page, other):
        page.get_by_text("Handling", exact=True).click()
    other.get_by_role("radio", name="Needs patience", exact=True).check(force=True)
    other.get_by_role("button", name="Save handling", exact=True).click()
    other.get_by_text("Saved on this phone.", exact=True).wait_for()
    expect(phone.page.get_by_role("radio", name="Needs patience", exact=True)).to_be_checked()  # nothing was begun here
    phone.fill("What worked", "towel over the head")
    expect(phone.page.get_by_label("What worked", exact=True)).to_have_value("towel over the head")
    second = other.get_by_role("radio", name="Needs a second person", exact=True)
    second.click(force=True)  # painted once it is kept: the page may draw what stood there between the two
    expect(second).to_be_checked()
    other.get_by_role("button", name="Save handling", exact=True).click()
    phone.shows("Taken over from there, since you changed nothing in it: How it takes handling.")
    phone.tap("Save handling")
    phone.page.get_by_text("Saved on this phone.", exact=True).wait_for()
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=30_000)
    [(letter,)] = server.rows("SELECT letter FROM journal ORDER BY position DESC LIMIT 1")
    assert json.loads(letter)["body"]["handling"] == {"grade": 2, "trick": "towel over the head"}


def test_handling_given_up_is_not_said_to_be_saved(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    work.add_animal(phone, "Cat", "Mira", "")
    phone.page.get_by_text("Handling", exact=True).click()
    choice = phone.page.get_by_role("radio", name="Needs patience", exact=True)
    saved = phone.page.get_by_text("Saved on this phone.", exact=True)
    choice.check(force=True)
    phone.tap("Cancel")
    expect(choice).not_to_be_checked()
    expect(saved).to_have_count(0)
    choice.check(force=True)
    phone.tap("Save handling")
    saved.wait_for()
    expect(choice).to_be_checked()
    phone.tap("Cancel")
    expect(saved).to_have_count(0)


def tap_twice(phone: Phone, name: str) -> None:
    """Both at once in the page itself, on a phone that is slow to read for a moment: so the second one meets the first under way."""
    phone.button(name).evaluate(f"(save) => {{ {SLOW_TO_READ} save.click(); save.click(); }}")


def test_a_second_tap_while_it_is_saved_does_nothing(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    phone.page.evaluate(NOTE_TROUBLE)
    phone.tap("Add animal")
    phone.choose("Species", "Cat")
    phone.fill("Name", "Mira")
    tap_twice(phone, "Save animal")
    phone.page.get_by_role("heading", name="Mira", exact=True).wait_for()
    phone.page.get_by_text("Handling", exact=True).click()
    phone.choose("Bruises or bleeds easily", "Yes")
    tap_twice(phone, "Save handling")
    phone.page.get_by_text("Saved on this phone.", exact=True).wait_for()
    phone.page.get_by_text("Sites not to be used", exact=True).click()
    phone.tap("No cuff here: Forearm · Left")
    phone.choose("Why no cuff there", "Missing")
    tap_twice(phone, "Save site")
    phone.shows("Forearm · Left · Missing · for good")
    who_form(phone.page)
    phone.fill("Breed", "Manx")
    tap_twice(phone, "Save changes")
    expect(phone.button("Change or add")).to_be_visible()
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=30_000)
    assert server.rows("SELECT count(*) FROM journal WHERE kind = 'patient'") == [(4,)]
    assert phone.page.evaluate("window.troubles") == []


def test_a_choice_made_while_handling_is_saved_stands_in_the_form_after(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = open_signed_in(server, new_phone)
    assert phone.context is not None
    phone.context.set_offline(True)
    work.add_animal(phone, "Cat", "Mira", "")
    phone.page.get_by_text("Handling", exact=True).click()
    phone.page.get_by_role("radio", name="Needs patience", exact=True).click(force=True)
    second = phone.page.get_by_role("radio", name="Needs a second person", exact=True)
    hold = second.element_handle()
    phone.button("Save handling").evaluate(f"(save, second) => {{ {SLOW_TO_READ} save.click(); setTimeout(() => second.click(), 150); }}", hold)
    phone.page.get_by_text("Saved on this phone.", exact=True).wait_for()
    expect(second).to_be_checked()
    phone.tap("Save handling")
    expect(phone.page.get_by_role("link", name="Outbox, 3 not sent")).to_be_visible()
    phone.context.set_offline(False)
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=45_000)
    letters = server.rows("SELECT letter FROM journal WHERE kind = 'patient' ORDER BY number")
    assert [json.loads(letter)["body"].get("handling") for (letter,) in letters] == [None, {"grade": 1}, {"grade": 2}]


def test_a_site_and_a_new_name_are_told_offline_and_come_into_the_record_as_one_animal(
    server: ServerProcess, new_phone: Callable[..., Phone]
) -> None:
    phone = open_signed_in(server, new_phone)
    work.add_animal(phone, "Cat", "Mira", "kennel 7")
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=30_000)
    assert phone.context is not None
    phone.context.set_offline(True)
    phone.page.get_by_text("Sites not to be used", exact=True).click()
    phone.tap("No cuff here: Forearm · Left")
    phone.choose("Why no cuff there", "Missing")
    expect(phone.page.get_by_role("group", name="Until when")).to_have_count(0)
    phone.tap("Save site")
    phone.shows("Forearm · Left · Missing · for good")
    phone.page.get_by_text("Who it is", exact=True).click()
    phone.tap("Change or add")
    phone.fill("Name", "Mirabel")
    phone.fill("Why this change", "misheard")
    phone.tap("Save changes")
    expect(phone.page.get_by_role("heading", name="Mirabel", exact=True)).to_be_visible()
    expect(phone.page.get_by_text("Saved on this phone", exact=True)).to_have_count(3)  # the animal, and its two changes
    phone.context.set_offline(False)
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=45_000)
    assert server.rows("SELECT name, mark, amended FROM patients") == [("Mirabel", "kennel 7", 1)]
    [(letter,)] = server.rows("SELECT letter FROM journal ORDER BY position DESC LIMIT 1")
    said = json.loads(letter)
    assert (said["reason"], said["body"]["sites_not_used"]) == ("misheard", [{"site": "forearm", "side": "left", "why": "missing"}])
